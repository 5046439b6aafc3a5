import type { BoxFigures } from '../../design';
import { type Block, type Row, space, subheading, table, sentence } from '../page';
import type { Figures } from '../wording';

type FromTo = BoxFigures['placed'][number]['fromLeft'];

const DATUM =
	'Each reaches from the first figure to the second, measured from the inside of the left end, of the front and of the bottom, each where it reaches farthest out';

/** Where everything stands inside a box, boards first, then rods by their axes. */
export function placesTable(box: BoxFigures, width: number, figures: Figures): Block[] {
	const span = ([from, to]: FromTo): string =>
		from === to ? figures.bench(from) : `${figures.bench(from)} to ${figures.bench(to)}`;
	const row = (label: string, name: string, at: BoxFigures['rods'][number]['place']): Row => ({
		cells: [label, name, span(at.fromLeft), span(at.fromFront), span(at.fromBottom)],
	});
	const rows = [
		...box.placed.map((p) => row(p.label, p.name, p)),
		...box.rods.map((r) => row('', `${r.name}, its middle`, r.place)),
	];
	if (rows.length === 0) return [];
	return [
		subheading('Places inside', width),
		...table(
			{
				columns: [
					{ head: '', width: 14 },
					{ head: 'What', width: { share: 1 } },
					{ head: 'From the left end', width: 36, align: 'end' },
					{ head: 'From the front', width: 34, align: 'end' },
					{ head: 'From the bottom', width: 34, align: 'end' },
				],
				rows,
				size: 2.9,
			},
			width,
		),
		...sentence([DATUM], width),
		space(4),
	];
}
