import type { Part } from '../../design';
import type { PinnedLayout } from '../../job';
import { changesOf, asMade, type Witnesses } from '../as-made';

type Made = PinnedLayout['made'][number];
type Marks = Exclude<keyof Made, 'id'>;

const SAID: Witnesses<Part, Marks> = {
	thickness: (part) => part.thickness,
	outline: ({ outline, short, shift }) => [outline, short, shift],
	bevels: ({ bevels }) => bevels.map(({ side, tilt }) => [side, tilt]),
	holes: ({ holes }) => holes,
	faces: ({ faceWork }) => faceWork,
};

const WORDS: Readonly<Record<Marks, string>> = {
	thickness: 'thickness',
	outline: 'outline or corners',
	bevels: 'bevels',
	holes: 'holes or windows',
	faces: 'grooves or rabbets',
};

/** What a part is at the hour it is cut. */
export const asCut = (part: Part): Made => ({ id: part.id, ...asMade(SAID, part) });

/**
 * What of a part on a sheet that is cut is another now, in words: 'size', 'bevels'. Null where it
 * is no part of the job any more.
 */
export function changedSince(
	part: Part | undefined,
	{ made }: Pick<PinnedLayout, 'made'>,
	placed: PinnedLayout['placed'][number],
): string[] | null {
	if (!part) return null;
	if (placed.kept) return [];
	const was = made.find(({ id }) => id === part.id);
	return changesOf(part, placed, { was, now: asCut(part), words: WORDS });
}
