import type { Part } from '../../design';
import type { PinnedLayout } from '../../job';
import { shortMarkOf } from '../short-mark';

/*
 * A part that is cut stays as it was, whatever its design becomes. What it was is kept with its
 * sheet as marks, one for each thing that makes a cut part wrong.
 */

type Made = PinnedLayout['made'][number];

/** What of a part each mark stands for. */
const SAID: Readonly<Record<Exclude<keyof Made, 'id'>, (part: Part) => unknown>> = {
	thickness: (part) => part.thickness,
	outline: ({ outline, short, shift }) => [outline, short, shift],
	bevels: ({ bevels }) => bevels.map(({ side, tilt }) => [side, tilt]),
	holes: ({ holes }) => holes,
	faces: ({ faceWork }) => faceWork,
};

const WORDS: Readonly<Record<keyof typeof SAID, string>> = {
	thickness: 'thickness',
	outline: 'outline or corners',
	bevels: 'bevels',
	holes: 'holes or windows',
	faces: 'grooves or rabbets',
};

/** What a part is at the hour it is cut. */
export function asCut(part: Part): Made {
	const of = (key: keyof typeof SAID): string => shortMarkOf(SAID[key](part));
	return {
		...{ id: part.id, thickness: of('thickness'), outline: of('outline') },
		...{ bevels: of('bevels'), holes: of('holes'), faces: of('faces') },
	};
}

/**
 * What of a part on a sheet that is cut is another now, in words: 'size', 'bevels'. Null where it
 * is no part of the job any more; a sheet of before the marks tells its size alone.
 */
export function changedSince(
	part: Part | undefined,
	{ made }: Pick<PinnedLayout, 'made'>,
	placed: PinnedLayout['placed'][number],
): string[] | null {
	if (!part) return null;
	if (placed.kept) return [];
	const { turn, length: along, width: across } = placed;
	const [length, width] = turn % 180 === 0 ? [along, across] : [across, along];
	const was = made.find(({ id }) => id === part.id);
	const now = asCut(part);
	const keys = Object.keys(WORDS) as (keyof typeof WORDS)[];
	const others = was ? keys.filter((key) => was[key] !== now[key]) : [];
	const isSized = part.length === length && part.width === width;
	return [...(isSized ? [] : ['size']), ...others.map((key) => WORDS[key])];
}
