import { bounds, type Outline } from '../../geometry';
import { boardHoles, type PanelDetail } from '../../design';
import { type Drawing, type Mark, circlePath, onPaper } from '../drawing';
import type { Figures } from '../wording';
import { toMm } from '../../measure';
import {
	boxOf,
	centreMark,
	Labels,
	openLine,
	outlineMark,
	overall,
	stageFor,
	TEXT,
	words,
} from '../marks';
import { footNotes, NOTE, viewOn } from './view';

const MARGINS = { left: 10, right: 20, top: 8, bottom: 20 };

/**
 * The board from behind: knife groove, fixings, and what is glued on there. Everything lies
 * mirrored, as it is seen with the face down on the bench.
 */
export function backView(
	d: PanelDetail,
	title: string,
	figures: Figures,
	mirror: boolean,
): Drawing {
	const legend = legendOf(d, figures);
	const margins = { ...MARGINS, bottom: MARGINS.bottom + legend.length * NOTE };
	const stage = stageFor(d.fit.sizes.board, margins, !mirror);
	const { view } = stage;
	const labels = new Labels();
	const behind = gluedBehind(d);
	for (const b of behind) labels.put(b.name, boxOf(bounds(b.outline), view));
	const marks: Mark[] = [
		...d.leaves.map((l) => outlineMark([l], view, 'wide')),
		...boardHoles(d).map((h) => outlineMark([h], view, 'wide')),
		...behind.flatMap((b) => [
			outlineMark([b.outline], view, 'narrow'),
			...(b.inner ? [outlineMark([b.inner], view, 'narrow')] : []),
		]),
		...grooveMarks(d, stage.view),
		...fixingMarks(d, stage.view),
		...overall(d.fit.sizes.board, stage, 0, 'board', figures),
		...labels.marks,
		...footNotes(legend, stage),
		words(2, TEXT + 1, 'seen from behind', { ink: 'pencil' }),
	];
	return viewOn(stage, title, marks);
}

function gluedBehind(d: PanelDetail): { name: string; outline: Outline; inner: Outline | null }[] {
	return [
		...d.layers.flatMap(({ name, place, piece }) =>
			place === 'recessed' && piece
				? [{ name: `Floor of ${name}`, outline: piece, inner: null }]
				: [],
		),
		...d.covers.map((c) => ({
			name: `Ledge of ${c.name}`,
			outline: c.ledge.outer,
			inner: c.ledge.inner,
		})),
	];
}

/**
 * Both walls of the groove would run into one line; its centre line stands for it, its size in
 * words.
 */
function grooveMarks(d: PanelDetail, view: Parameters<typeof openLine>[1]): Mark[] {
	return (d.groove?.runs ?? []).map((run) => openLine(run, view, 'chain', 'chalk'));
}

function fixingMarks(d: PanelDetail, view: Parameters<typeof openLine>[1]): Mark[] {
	const f = d.fixings;
	if (!f) return [];
	return f.at.flatMap((p): Mark[] => {
		const { x, y } = onPaper(p, view);
		const r = Math.max(0.7, (toMm(f.hole) / 2) * view.scale);
		return [
			{ kind: 'path', steps: circlePath(x, y, r), line: 'narrow' },
			centreMark(p, view, r + 1.2),
		];
	});
}

function legendOf(d: PanelDetail, figures: Figures): string[] {
	const g = d.groove;
	const f = d.fixings;
	const magnets = d.covers.reduce((n, c) => n + c.magnets.length, 0);
	return [
		...(g
			? [
					`Knife groove (chain line): ${figures.length(g.offset)} from the edge, ${figures.length(g.width)} wide, ${figures.length(g.depth)} deep, ${figures.length(g.length)} long in all`,
					...(g.stops.length > 0 ? [`It stops at ${g.stops.join(', ')}`] : []),
				]
			: []),
		...(f
			? [
					`${f.at.length} ${f.kind}, hole ${figures.length(f.hole)}, ${figures.length(f.inset)} from the edge, at most ${figures.length(f.widest)} apart`,
				]
			: []),
		...(magnets > 0 ? [`${magnets} magnets on the ledges, drawn with the covers`] : []),
	];
}
