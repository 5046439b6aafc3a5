import { mm, wholeMost } from '../../../measure';
import { bounds, distanceTo, flatten, liesIn, type Outline } from '../../../geometry';
import type { Path } from '../../../job';
import { say, type Bench } from '../bench';
import type { PanelDetail } from '../figures';

type Figures = Omit<PanelDetail, 'assembly'>;

/** A strip of board narrower than this breaks out when it is cut. Common practice, no source. */
const LEAST_RIM = mm(6);
const CHORD = 160; // ticks

/** Board left between what is cut out and the edge. */
export function checkRims(bench: Bench, f: Figures): void {
	const cuts: { readonly name: string; readonly hole: Outline; readonly path: Path }[] = [
		...f.windows.map((w) => ({ name: w.name, hole: w.hole, path: at(bench, 'windows', w.id) })),
		...f.covers.map((c) => ({ name: c.name, hole: c.hole, path: at(bench, 'covers', c.id) })),
		...f.layers.flatMap(({ name, hole, id, on }) =>
			hole && on === null ? [{ name, hole, path: at(bench, 'layers', id) }] : [],
		),
	];
	for (const { name, hole, path } of cuts) {
		if (!liesIn(hole, f.fit.board)) continue;
		const rim = rimOf(hole, f.fit.board);
		if (rim < LEAST_RIM)
			bench.log.check(
				path,
				`${name} leaves ${say(bench, rim)} of board beside the edge; it breaks out when it is cut.`,
				`Leave ${say(bench, LEAST_RIM)} or more, or let it run out over the edge on purpose.`,
			);
	}
}

function at(bench: Bench, list: 'windows' | 'covers' | 'layers', id: string): Path {
	return [list, bench.panel[list].findIndex((x) => x.id === id), 'outline'];
}

function rimOf(hole: Outline, board: Outline): number {
	return Math.min(
		...flatten(hole, CHORD).map((p) => distanceTo(p, board)),
		...flatten(board, CHORD).map((p) => distanceTo(p, hole)),
	);
}

/** Cloth turned on to the back from both sides must not lie over itself there. */
export function checkTurnUnder(bench: Bench, f: Figures): void {
	const { margin, grip } = bench.panel;
	if (!f.cloth || !f.fit.boardEdges.includes('wrapped')) return;
	const { length, width } = bounds(f.fit.board);
	const across = Math.min(length, width);
	const said = (field: string, wide: number, what: string): void =>
		bench.log.check(
			[field],
			`${what} is ${say(bench, wide)}, and the board is only ${say(bench, across)} across: the cloth would lie over itself on the back.`,
			`Give ${wholeMost(across / 2, bench.job.shop.ruler)} or less.`,
		);
	if (!f.groove && 2 * margin > across) said('margin', margin, 'The turn-under');
	if (f.groove && 2 * grip > across) said('grip', grip, 'The cloth to hold on to');
}
