import type { ColumnAs, Vocabulary } from '../table';

/** What a column of a list of parts may be. */
const MEANINGS = [
	'mark',
	'name',
	'count',
	'length',
	'width',
	'thickness',
	'material',
	'grain',
	'note',
] as const;
export type Meaning = (typeof MEANINGS)[number];
export type ListColumn = ColumnAs<Meaning>;

/** Headings people write over a list of parts; common practice, no source. */
export const PARTS_WORDS: Vocabulary<Meaning> = {
	meanings: MEANINGS,
	words: {
		mark: 'mark id code key ref reference label tag position pos partno partnumber partid itemno itemnumber',
		name: 'name description desc title piece component partname partdescription element what',
		count:
			'count qty quantity pcs pieces pc amount howmany noof noofpcs noofpieces numberof nos off each ea',
		length: 'length l len long cutlength',
		width: 'width w wide breadth b cutwidth',
		thickness: 'thickness thick thk th t',
		material: 'material mat matl board boards sheet stock materialname boardname',
		grain: 'grain graindirection graindir dir direction',
		note: 'note notes comment comments remark remarks info',
	},
	doubtful: [
		// A part's name or its mark, by what else there is.
		{ words: ['part', 'item'], meanings: () => ['name', 'mark'] },
		// A running number or how many, by what else there is.
		{
			words: ['no', 'nr', 'num', 'number', '#'],
			meanings: (columns) => (columns.includes('count') ? ['mark'] : []),
		},
		// Height may be the length or the width, depth either too: only the person knows.
		{
			words: 'height h high depth d size sizes dimension dimensions'.split(' '),
			meanings: () => [],
		},
	],
	needed: ['length', 'width'],
	figures: ['length', 'width', 'thickness'],
	counted: 'count',
	row: { one: 'a part', each: 'each part' },
};
