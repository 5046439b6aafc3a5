import { type Designed, type Part, type WorkPiece, workOn } from '../../design';
import type { Job } from '../../job';
import { type Drawing, orStandIn } from '../drawing';
import { type Figures, figuresOn } from '../wording';
import { cardDrawing, type Lot } from './card';
import { cardsOf, lotsOf } from './cards';

/** Parts as they are worked, and a box that says so for each that cannot be told of. */
interface Worked {
	readonly pieces: readonly WorkPiece[];
	readonly faults: readonly Drawing[];
}

export function workedParts(parts: readonly Part[], designed: Designed): Worked {
	const work = workOn(designed);
	const pieces: WorkPiece[] = [];
	const faults = parts.flatMap((part): Drawing[] => {
		const title = `${part.label} ${part.name}`;
		const tried = orStandIn(title, () => {
			pieces.push(work(part));
			return { width: 0, height: 0, title, marks: [] };
		});
		return tried.fault === undefined ? [] : [tried];
	});
	return { pieces, faults };
}

/** Every part of a box or a panel as it is worked, face by face. */
export function partDrawings(
	job: Job,
	parts: readonly Part[],
	designed: Designed,
	figures: Figures = figuresOn(job.shop.ruler),
): Drawing[] {
	const { pieces, faults } = workedParts(parts, designed);
	const drawings = lotsOf(job, pieces, figures).flatMap((lot) => drawingsOf(lot, figures));
	return [...drawings, ...faults];
}

/** The cards of a lot as drawings; a box that says so where they cannot be made. */
export function drawingsOf(lot: Lot, figures: Figures): Drawing[] {
	const title = `${lot.labels} ${lot.piece.part.name}`;
	let made: Drawing[] = [];
	const first = orStandIn(title, () => {
		made = cardsOf(lot, figures).map(cardDrawing);
		return made[0] ?? { width: 0, height: 0, title, marks: [] };
	});
	return first.fault === undefined ? made.map((d) => orStandIn(d.title, () => d)) : [first];
}
