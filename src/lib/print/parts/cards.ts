import { needsWork, type Operation, type WorkFace, type WorkPiece } from '../../design';
import { type Job, materialName } from '../../job';
import { nth, toMm } from '../../measure';
import type { Figures } from '../wording';
import { type Card, cardOf, fitsLine, type Lot } from './card';
import type { CardWidth } from './face-stage';
import { operationText } from './operation-text';

/** Parts worked alike, each lot once; they differ in nothing but their marks. */
export function lotsOf(job: Job, pieces: readonly WorkPiece[], f: Figures): Lot[] {
	const lots = new Map<string, WorkPiece[]>();
	for (const piece of pieces.filter(needsWork)) {
		const key = keyOf(piece);
		lots.set(key, [...(lots.get(key) ?? []), piece]);
	}
	return [...lots.values()].map((alike) => {
		const piece = nth(alike, 0);
		const { material, thickness } = piece.part;
		return {
			piece,
			labels: alike.map(({ part }) => part.label).join(', '),
			count: alike.reduce((sum, { part }) => sum + part.count, 0),
			material: `${materialName(job, material)}, ${f.length(thickness)}`,
		};
	});
}

function keyOf({ part, faces }: WorkPiece): string {
	const { material, thickness, grain, length, width, name } = part;
	return JSON.stringify([material, thickness, grain, length, width, name, faces]);
}

/** A card for each face of a lot that is worked, all of one width. */
export function cardsOf(lot: Lot, f: Figures): Card[] {
	const { faces } = lot.piece;
	const width: CardWidth = faces.some(isCrowded)
		? 180
		: faces.every((face) => isPlain(face, f))
			? 58
			: 88;
	return faces.map((_, i) => cardOf(lot, i, width, f));
}

/** Drawn small and with much on it: it takes the whole width of the page. */
function isCrowded(face: WorkFace): boolean {
	const made = madeOn(face);
	const small = shrunk(face, 70, 64);
	return made > 24 || (made > 8 && small > 12) || small > 25;
}

/** With little on it, and every place on a line of its own: three stand beside each other. */
function isPlain(face: WorkFace, f: Figures): boolean {
	return (
		madeOn(face) <= 8 &&
		face.outline.length <= 8 &&
		shrunk(face, 38, 33) <= 20 &&
		face.operations.every((op) =>
			operationText(op, face.seen, f).points.every((text) => fitsLine(text, 58)),
		)
	);
}

/** How many times smaller than the part a drawing of so many millimetres is. */
function shrunk({ across, up }: WorkFace, wide: number, tall: number): number {
	return Math.max(toMm(across) / wide, toMm(up) / tall);
}

function madeOn({ operations }: WorkFace): number {
	return operations.reduce((sum, op) => sum + pointsOf(op), 0);
}

function pointsOf(op: Operation): number {
	if (op.kind === 'holes') return op.at.length;
	return 'form' in op && op.form.kind === 'corners' ? op.form.corners.length : 1;
}
