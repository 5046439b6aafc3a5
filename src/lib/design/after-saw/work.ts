import type { Bevel, Part } from '../part';
import { rectangle } from '../../geometry';
import type { BoxPlan } from '../box';
import type { PanelPlan } from '../panel';
import { boardPiece } from './of-board';
import { panelPiece } from './of-panel';
import { marked } from './form';
import { Numbers } from './numbers';
import type { Operation } from './operation';
import { outlineCut } from './outline-cut';
import type { WorkPiece } from './work-piece';

/** What was designed, as far as its parts tell of it. */
export interface Designed {
	readonly boxes: readonly BoxPlan[];
	readonly panels: readonly PanelPlan[];
}

/** Tells of a part what is done to it after the saw. */
export function workOn({ boxes, panels }: Designed): (part: Part) => WorkPiece {
	const boards = new Map(
		boxes.flatMap((b) => b.figures?.boards ?? []).map((board) => [board.part, board]),
	);
	const panelOf = new Map(panels.map((p) => [p.id, p]));
	return (part) => {
		const board = boards.get(part.id);
		if (board) return boardPiece(board, part);
		const panel = panelOf.get(part.owner);
		return (panel && panelPiece(panel, part)) ?? plainPiece(part);
	};
}

/** A part of which nothing is known but what its own list says. */
function plainPiece(part: Part): WorkPiece {
	const { length: across, width: up, face } = part;
	const outline = part.outline ?? rectangle(0, 0, across, up);
	const numbers = new Numbers();
	return {
		part,
		faces: [
			{
				seen: face,
				from: 'blank',
				across,
				up,
				outline,
				behind: null,
				edges: [],
				grain: part.grain === 'any' ? 'any' : 'across',
				through: [],
				operations: [
					...outlineCut(outline, across, up),
					...part.bevels.map((b) => bevelOf(part, b)),
					...part.holes.map((hole): Operation => ({
						kind: 'cut',
						n: numbers.take(),
						name: 'cut-out',
						...marked(hole),
						depth: null,
					})),
				],
			},
		],
	};
}

function bevelOf({ shift }: Part, { edge, side, tilt, mitre, long }: Bevel): Operation {
	const across = side === 'left' || side === 'right';
	return {
		kind: 'bevel',
		edge: { letter: edge, side },
		tilt,
		mitre: mitre ?? 0,
		up: long,
		sharp: (shift?.offset[across ? 'length' : 'width'] ?? 0) > 0,
		set: null,
	};
}
