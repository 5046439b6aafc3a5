import type { PulledCloth } from '../../job';
import type { Blank, BlankMark } from '../../wrap';
import { shortMarkOf } from '../short-mark';

/*
 * A blank that is pulled stays as it was, whatever its design becomes. What it was is kept with the
 * cloth as marks, one for each thing that makes a cut blank wrong.
 */

type Made = PulledCloth['made'][number];

const lines = (blank: Blank, kinds: readonly BlankMark['kind'][]) =>
	blank.marks
		.filter(({ kind }) => kinds.includes(kind))
		.map(({ kind, line, closed }) => [kind, line, closed]);

/** What of a blank each mark stands for. */
const SAID: Readonly<Record<Exclude<keyof Made, 'id'>, (blank: Blank) => unknown>> = {
	outline: ({ outline }) => outline,
	reliefs: (blank) => lines(blank, ['slit', 'notch']),
	openings: (blank) => lines(blank, ['window', 'hole']),
	seams: (blank) => [lines(blank, ['seam']), blank.partAt ?? null],
	folds: (blank) => lines(blank, ['fold', 'trim', 'step', 'bend', 'centre']),
};

const WORDS: Readonly<Record<keyof typeof SAID, string>> = {
	outline: 'outline',
	reliefs: 'notches or slits',
	openings: 'windows or holes',
	seams: 'seams',
	folds: 'fold lines',
};

/** What a blank is at the hour it is cut. */
export function asPulled(blank: Blank): Made {
	const of = (key: keyof typeof SAID): string => shortMarkOf(SAID[key](blank));
	return {
		...{ id: blank.id, outline: of('outline'), reliefs: of('reliefs') },
		...{ openings: of('openings'), seams: of('seams'), folds: of('folds') },
	};
}

/**
 * What of a blank on cloth that is pulled is another now, in words: 'size', 'seams'. Null where it
 * is no blank of the job any more; cloth of before the marks tells its size alone.
 */
export function blankChanged(
	blank: Blank | undefined,
	{ made }: Pick<PulledCloth, 'made'>,
	placed: PulledCloth['placed'][number],
): string[] | null {
	if (!blank) return null;
	const { turn, length: along, width: across } = placed;
	const [length, width] = turn % 180 === 0 ? [along, across] : [across, along];
	const was = made.find(({ id }) => id === blank.id);
	const now = asPulled(blank);
	const keys = Object.keys(WORDS) as (keyof typeof WORDS)[];
	const others = was ? keys.filter((key) => was[key] !== now[key]) : [];
	const isSized = blank.length === length && blank.width === width;
	return [...(isSized ? [] : ['size']), ...others.map((key) => WORDS[key])];
}
