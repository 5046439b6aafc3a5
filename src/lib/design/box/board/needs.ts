import type { Box } from '../../../job';
import { mm, toMm, TICKS_PER_MM } from '../../../measure';
import type { Need } from '../../need';
import type { Seam } from './seam';

/** Square metres of so many square ticks. */
export const squareMetres = (area: number): number => area / (TICKS_PER_MM * 1000) ** 2;

/**
 * Common practice, no source: the first and the last fastener sit this far from the end of a seam.
 */
export const SCREW_FROM_END = mm(50);

/** The same for a seam of this length: two of a short one part it in three. */
export function screwFromEnd(length: number): number {
	return Math.min(SCREW_FROM_END, length / 3);
}

/** Fasteners along a length at a spacing, never fewer than two. */
export function along(length: number, spacing: number): number {
	return Math.max(2, Math.ceil((length - 2 * SCREW_FROM_END) / spacing) + 1);
}

/**
 * Screws of one seam: butt joints are screwed, mitres are glued and clamped, strips are screwed
 * through their face.
 */
export function screwsOf(seam: Seam, box: Pick<Box, 'fasteners'>): number {
	return seam.kind === 'mitre' || seam.kind === 'face'
		? 0
		: along(seam.length, box.fasteners.screwSpacing);
}

/** Brads that hold a seam while its glue sets. */
export function bradsOf(seam: Seam, box: Pick<Box, 'fasteners'>): number {
	const spacing = box.fasteners.bradSpacing;
	return spacing === null || seam.kind === 'face' ? 0 : along(seam.length, spacing);
}

/** What the seams of all boxes of one kind use up. */
export function seamNeeds(seams: readonly Seam[], box: Box): Need[] {
	const times = box.count;
	const sum = (of: (s: Seam) => number): number =>
		seams.reduce((total, s) => total + of(s), 0) * times;
	const sealed = box.fasteners.sealant ? toMm(sum((s) => (s.seals ? s.length : 0))) / 1000 : 0;
	const words = `seams of ${box.name}`;
	return needs([
		{ kind: 'wood-glue', amount: squareMetres(sum((s) => s.area)), for: words },
		{ kind: 'screws', amount: sum((s) => screwsOf(s, box)), for: words },
		{ kind: 'brads', amount: sum((s) => bradsOf(s, box)), for: words },
		{ kind: 'sealant', amount: sealed, for: words },
	]);
}

export function needs(list: readonly Need[]): Need[] {
	return list.filter((n) => n.amount > 0);
}
