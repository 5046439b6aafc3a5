import type { Kept } from './units';

/** On any ruler. */
const ALWAYS: readonly Kept[] = [
	{ words: /100 mm\s+4 in/g, why: 'the bars that a print is measured by, one for either tape' },
	{
		words: /\d+\s+mm\s+\(\d+\s+in\)|\d+\s+kg\s+\(\d+\s+lb\)/g,
		why: 'cautions give both: they are read by whoever stands beside',
	},
	{
		words: /\b[A-Z]\d+(?:\.\d+)?\s+[A-Z]\b/g,
		why: 'the mark of a template and the letter of its piece',
	},
	{
		words: /below\s+\d+\s+in\s+wide\s+or\s+\d+\s+in\s+long/g,
		why: 'a source of a caution in the words it was published in',
	},
];

/** On any ruler, of what a file holds that cannot be read. */
const OF_FILES: readonly Kept[] = [
	{
		words:
			/Write a length such as [^\n]*|unit such as "[^"]*"|Write litres as a number, or a text such as [^\n]*/g,
		why: 'examples of each way in which a file may write it',
	},
	{ words: /one of "[^\n]*/g, why: 'the very words a file may hold' },
	{
		words: /The drawing seems to be in [^.]*|one unit is [^;]*; it was read with [^.]*/g,
		why: 'the unit of a drawing, whatever the shop measures in',
	},
	{ words: /By EN [^\n]* it would be/g, why: 'standards as they name their own sizes' },
];

/** Where a shop measures in inches or centimetres. */
const NOT_IN_MM: readonly Kept[] = [
	{
		words: /102\s+mm\/min|mg\/m3/g,
		why: 'limits of a standard and of an authority, as they were published',
	},
	{
		words: /\bat\s+1\s+m,|\bat\s+1\s+m\s+in\s+half/gi,
		why: 'the distance sound pressure is stated at',
	},
	{ words: /\d+\s+g(?=\s+stop|\.)/g, why: 'times the pull of the earth: no unit of mass' },
	{
		words:
			/Cone,(?:\s+one\s+way,)?\s+mm|Passive(?:\s+radiators,\s+one\s+way)?,\s+mm|Xmax\s+[\d.]+\s+mm/g,
		why: 'excursion is in millimetres on every data sheet, and so are the curves beside it',
	},
	{
		words: /goes\s+[\d.]+\s+mm\s+at|past\s+its\s+[\d.]+\s+mm|excursion\s+is\s+[\d.]+\s+mm/g,
		why: 'the same in a sentence',
	},
	{
		words: /m\/s/g,
		why: 'air in a vent is judged in metres a second in all that is published on it',
	},
	{
		words: /[\d.]+\s+g(?=\s+\n|\s+on\s|\s+added|\s+cannot)/g,
		why: 'moving mass is in grams on every data sheet, and so is what is added to it',
	},
	{
		words: /m2, m, litres or pieces/g,
		why: 'what a pack holds is counted in these in a file, and asked for in these',
	},
	{ words: /mm\/N/g, why: 'compliance likewise' },
];

/** What stays in a job on each ruler. */
export const KEPT = {
	mm: [...ALWAYS, ...OF_FILES],
	cm: [...ALWAYS, ...OF_FILES, ...NOT_IN_MM],
	in: [...ALWAYS, ...OF_FILES, ...NOT_IN_MM],
};
