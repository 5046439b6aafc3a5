import type { Chamber } from '../../design';
import { type Ruler, showVolume } from '../../measure';
import { type Block, type Row, space, subheading, table, sentence } from '../page';
import { ADJUSTED, volumeLines } from '../wording';

/** The air of a chamber line by line. */
export function volumeTable(chamber: Chamber, of: number, width: number, ruler: Ruler): Block[] {
	const nth = of > 1 ? ` of chamber ${chamber.number}` : '';
	const line = (what: string, amount: string): Row => ({ cells: [what, amount] });
	const lines = volumeLines(chamber, ruler);
	const extra = [
		...(chamber.acting === chamber.net
			? []
			: [line('Acts like, stuffing counted', showVolume(chamber.acting, ruler))]),
		...(chamber.wanted === null ? [] : [line('Wanted', showVolume(chamber.wanted, ruler))]),
	];
	return [
		subheading(`Air${nth}`, width),
		...table(
			{
				columns: [
					{ head: '', width: { share: 1 } },
					{ head: 'Volume', width: 32, align: 'end' },
				],
				rows: [
					line('Gross, from measured thickness', lines.gross),
					...lines.deductions.map((d) => line(d.what, d.signed)),
					{ ...line('Net', lines.net), sum: true },
					...extra,
				],
			},
			width,
		),
	];
}

/** What the air of a chamber makes of its driver, under its table. */
export function volumeWords(chamber: Chamber, width: number, ruler: Ruler): Block[] {
	const { adjusted } = volumeLines(chamber, ruler);
	const says = [adjusted ? ADJUSTED : '', chamber.stuffing ?? '', tuningText(chamber, ruler)];
	return [...sentence([...says, ...chamber.says], width), space(4)];
}

/** What the air makes of the driver, to a tenth of a hertz: more would claim what no box keeps. */
function tuningText(chamber: Chamber, ruler: Ruler): string {
	const hz = (n: number) => `${n.toFixed(1).replace('.', ruler.decimal)} Hz`;
	if (chamber.tuning !== null) return `Tuned to ${hz(chamber.tuning)}`;
	const { sealed } = chamber;
	if (sealed === null) return '';
	const q = sealed.qtc.toFixed(2).replace('.', ruler.decimal);
	const other =
		sealed.wantedVolume === null
			? ''
			: `; the Qtc wanted takes ${showVolume(sealed.wantedVolume, ruler)}, stuffing counted`;
	return `Sealed: Qtc ${q}, resonance ${hz(sealed.fc)}, half power at ${hz(sealed.f3)}${other}`;
}
