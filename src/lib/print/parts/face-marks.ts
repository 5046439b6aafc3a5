import type { Operation, WorkFace } from '../../design';
import { toMm } from '../../measure';
import { type Mark, circlePath, type LineKind, onPaper } from '../drawing';
import { centreMark, openLine, outlineMark, type Stage } from '../marks';

/**
 * The lines of a face: its outline wide, the face behind it dashed, what is cut through wide, what
 * is set in narrow, what is only set there in pencil, the knife groove as a chain.
 */
export function faceLines(face: WorkFace, stage: Stage, label: string): Mark[] {
	const { view } = stage;
	return [
		outlineMark([face.outline], view, 'wide', { of: `part:${label}` }),
		...(face.behind ? [outlineMark([face.behind], view, 'dashed')] : []),
		...face.through.map((o) => outlineMark([o], view, 'hair')),
		...face.operations.flatMap((op) => operationLines(op, stage)),
	];
}

function operationLines(op: Operation, stage: Stage): Mark[] {
	const { view } = stage;
	switch (op.kind) {
		case 'rabbet':
			return [outlineMark([op.outline], view, 'narrow')];
		case 'cut':
			return [outlineMark([op.outline], view, op.depth === null ? 'wide' : 'narrow')];
		case 'holes':
			return holeLines(op, stage);
		case 'groove':
			return op.runs.map((run) => openLine(run, view, 'chain', 'chalk'));
		case 'place':
			return [
				outlineMark([op.outline], view, 'narrow', { ink: 'pencil' }),
				...(op.space ? [outlineMark([op.space], view, 'chain', { ink: 'pencil' })] : []),
			];
		default:
			return [];
	}
}

/** A hole drawn this small is no more than a mark for the drill, mm of paper. */
const SMALL = 3;

function holeLines(op: Extract<Operation, { kind: 'holes' }>, { view }: Stage): Mark[] {
	const r = Math.max(0.5, (toMm(op.diameter) / 2) * view.scale);
	const line: LineKind = r > SMALL && op.depth === null ? 'wide' : 'narrow';
	return op.at.flatMap((p) => {
		const { x, y } = onPaper(p, view);
		const hole: Mark = { kind: 'path', steps: circlePath(x, y, r), line };
		return [hole, centreMark(p, view, r > SMALL ? 2 : r + 0.8)];
	});
}
