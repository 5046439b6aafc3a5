import { needsWork, type Operation, type WorkFace, type WorkPiece } from '../../design';
import { type Job, materialName } from '../../job';
import { nth, toMm } from '../../measure';
import type { Figures } from '../wording';
import { type Card, cardOf, type Lot } from './card';
import type { CardWidth } from './face-stage';

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

/** A card for each face of a lot that is worked; of one width, so that they stand together. */
export function cardsOf(lot: Lot, f: Figures): Card[] {
	const { faces } = lot.piece;
	const width: CardWidth = faces.some(isCrowded) ? 180 : 88;
	return faces.map((_, i) => cardOf(lot, i, width, f));
}

/** Drawn small and with much on it: it takes the whole width of the page. */
function isCrowded({ across, up, operations }: WorkFace): boolean {
	const made = operations.reduce((sum, op) => sum + pointsOf(op), 0);
	const small = Math.max(toMm(across) / 70, toMm(up) / 64);
	return made > 24 || (made > 8 && small > 12) || small > 25;
}

function pointsOf(op: Operation): number {
	if (op.kind === 'holes') return op.at.length;
	return 'form' in op && op.form.kind === 'corners' ? op.form.corners.length : 1;
}
