import { TICKS_PER_MM } from '../../../measure';
import type { Path } from '../../../job';
import { commonArea, liesIn, type Outline } from '../../../geometry';
import type { Bench } from '../bench';
import type { LayerFigure, PanelDetail } from '../figures';

type Figures = Omit<PanelDetail, 'assembly'>;
/** A square millimetre: less than this in common is a shared line, not an overlap. */
const NOTHING = TICKS_PER_MM ** 2;

/** Does everything lie on the board, and nothing on top of something else? */
export function checkLies(bench: Bench, f: Figures): void {
	f.windows.forEach((w) => onBoard(bench, w.hole, f.fit.board, w.name, at(bench, 'windows', w.id)));
	f.covers.forEach((c) =>
		onBoard(bench, c.ledge.outer, f.fit.board, `The ledge of ${c.name}`, at(bench, 'covers', c.id)),
	);
	f.layers.forEach((l) => layerLies(bench, f, l));
	const cuts = [
		...f.windows.map((w) => ({ name: w.name, outline: w.hole, path: at(bench, 'windows', w.id) })),
		...f.covers.map((c) => ({ name: c.name, outline: c.hole, path: at(bench, 'covers', c.id) })),
		...f.layers.flatMap((l) =>
			l.on === null && l.hole
				? [{ name: l.name, outline: l.hole, path: at(bench, 'layers', l.id) }]
				: [],
		),
	];
	cuts.forEach((a, i) =>
		cuts.slice(i + 1).forEach((b) => {
			if (commonArea([a.outline], [b.outline]) > NOTHING)
				bench.log.check(
					b.path,
					`${b.name} and ${a.name} run into each other.`,
					'Move one of them, or make them one.',
				);
		}),
	);
}

function at(bench: Bench, list: 'windows' | 'covers' | 'layers', id: string): Path {
	return [list, bench.panel[list].findIndex((x) => x.id === id), 'outline'];
}

function onBoard(bench: Bench, outline: Outline, board: Outline, name: string, path: Path): void {
	if (!liesIn(outline, board))
		bench.log.check(
			path,
			`${name} runs over the edge of the board.`,
			'Move it inwards, or make it smaller.',
		);
}

function layerLies(bench: Bench, f: Figures, l: LayerFigure): void {
	const host = l.on === null ? f.fit.board : f.layers.find((h) => h.id === l.on)?.piece;
	const path = at(bench, 'layers', l.id);
	const own = l.hole ?? l.piece;
	if (host && own) onBoard(bench, own, host, l.name, path);
	if (l.place !== 'raised' || !l.piece) return;
	for (const w of [...f.windows, ...f.covers]) {
		const shared = commonArea([l.piece], [w.hole]);
		if (shared > NOTHING && !liesIn(w.hole, l.piece))
			bench.log.check(
				path,
				`The edge of ${l.name} runs across ${w.name}.`,
				'Let the layer end before it, or go all round it.',
			);
	}
	for (const other of f.layers) {
		if (other === l) break;
		if (other.place === 'raised' && other.on === l.on && other.piece)
			if (commonArea([l.piece], [other.piece]) > NOTHING)
				bench.log.check(
					path,
					`${l.name} and ${other.name} lie in the same place.`,
					`Put one on the other, or move it.`,
				);
	}
}
