import type { PulledCloth } from '../../job';
import type { Blank, BlankMark } from '../../wrap';
import { changesOf, asMade, type Witnesses } from '../as-made';

type Made = PulledCloth['made'][number];
type Marks = Exclude<keyof Made, 'id'>;

const lines = (blank: Blank, kinds: readonly BlankMark['kind'][]) =>
	blank.marks
		.filter(({ kind }) => kinds.includes(kind))
		.map(({ kind, line, closed }) => [kind, line, closed]);

const SAID: Witnesses<Blank, Marks> = {
	outline: ({ outline }) => outline,
	reliefs: (blank) => lines(blank, ['slit', 'notch']),
	openings: (blank) => lines(blank, ['window', 'hole']),
	seams: (blank) => [lines(blank, ['seam']), blank.partAt ?? null],
	folds: (blank) => lines(blank, ['fold', 'trim', 'step', 'bend', 'centre']),
};

const WORDS: Readonly<Record<Marks, string>> = {
	outline: 'outline',
	reliefs: 'notches or slits',
	openings: 'windows or holes',
	seams: 'seams',
	folds: 'fold lines',
};

/** What a blank is at the hour it is cut. */
export const asPulled = (blank: Blank): Made => ({ id: blank.id, ...asMade(SAID, blank) });

/**
 * What of a blank on cloth that is pulled is another now, in words: 'size', 'seams'. Null where it
 * is no blank of the job any more.
 */
export function blankChanged(
	blank: Blank | undefined,
	{ made }: Pick<PulledCloth, 'made'>,
	placed: PulledCloth['placed'][number],
): string[] | null {
	if (!blank) return null;
	const was = made.find(({ id }) => id === blank.id);
	return changesOf(blank, placed, { was, now: asPulled(blank), words: WORDS });
}
