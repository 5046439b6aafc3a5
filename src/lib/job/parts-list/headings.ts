import { nth } from '../../measure';

/** What a column of a list of parts may be. */
export const MEANINGS = [
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

/** Of a column: what it is, 'out' when it is left out, null while nobody can tell. */
export type ListColumn = Meaning | 'out' | null;

/** Headings people write, in small letters without spaces and dots; common practice, no source. */
const WORDS: Readonly<Record<Meaning, string>> = {
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
};

/** A part's name or its mark, by what else there is. */
const NAME_OR_MARK = ['part', 'item'];
/** A running number or how many, by what else there is. */
const MARK_OR_COUNT = ['no', 'nr', 'num', 'number', '#'];
/** Height may be the length or the width, depth either too: only the person knows. */
const EITHER_SIDE = [
	'height',
	'h',
	'high',
	'depth',
	'd',
	'size',
	'sizes',
	'dimension',
	'dimensions',
];

const KNOWN = new Map(
	MEANINGS.flatMap((meaning) => WORDS[meaning].split(' ').map((word) => [word, meaning] as const)),
);

/** Does a cell read like the heading of a column? */
export function isHeading(cell: string): boolean {
	const { word } = headingOf(cell);
	const doubtful = [...NAME_OR_MARK, ...MARK_OR_COUNT, ...EITHER_SIDE];
	return KNOWN.has(word) || doubtful.includes(word);
}

/** What the columns are by their headings; a heading nobody knows is left out. */
export function columnsOf(headings: readonly string[]): ListColumn[] {
	const words = headings.map((heading) => headingOf(heading).word);
	const columns = words.map((word): ListColumn => KNOWN.get(word) ?? 'out');
	settle(words, columns, NAME_OR_MARK, ['name', 'mark']);
	const counted = columns.includes('count');
	settle(words, columns, MARK_OR_COUNT, counted ? ['mark'] : []);
	settle(words, columns, EITHER_SIDE, []);
	// Of two columns by one name nobody knows which is meant.
	return columns.map((column, i) =>
		columns.indexOf(column) < i && column !== 'out' ? null : column,
	);
}

/** Doubtful words take the first meaning that is still free; none left, the person is asked. */
function settle(
	words: readonly string[],
	columns: ListColumn[],
	doubtful: readonly string[],
	meanings: readonly Meaning[],
): void {
	for (const [i, word] of words.entries())
		if (doubtful.includes(word))
			columns[i] = meanings.find((meaning) => !columns.includes(meaning)) ?? null;
}

/** Units as headings name them, and as a length is written with them. */
const UNITS: readonly (readonly [RegExp, string])[] = [
	[/^(mm|millimet(er|re)s?)$/, 'mm'],
	[/^(cm|centimet(er|re)s?)$/, 'cm'],
	[/^(m|met(er|re)s?)$/, 'm'],
	[/^(in|ins|inch|inches|"|″|'')$/, 'in'],
	[/^(ft|feet|foot|'|′)$/, 'ft'],
];

interface Heading {
	/** In small letters, without spaces, dots and its unit. */
	readonly word: string;
	/** The unit it names, as a length is written with it; '' when it names none. */
	readonly unit: string;
}

/** `Length (mm)`, `Width in`, `L"`: the word and the unit. */
export function headingOf(cell: string): Heading {
	const text = cell.normalize('NFKC').trim().toLowerCase();
	const found = /^(.*?)[\s([{/,_:-]*?(?:[\s([{/,_:-]([a-z]+)|(''|["'″′]))\.?[)\]}\s.]*$/s.exec(
		text.slice(0, 80),
	);
	const word = found ? plain(nth(found, 1).replace(/\sin$/, '')) : ''; // 'Length in mm'
	const named = found?.[2] ?? found?.[3] ?? '';
	const unit = UNITS.find(([pattern]) => pattern.test(named))?.[1];
	return unit !== undefined && word !== '' ? { word, unit } : { word: plain(text), unit: '' };
}

const plain = (text: string): string => text.replace(/[^\p{L}\p{N}#]/gu, '');
