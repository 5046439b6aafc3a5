import { nth } from '../../measure';

/** Of a column: what it is, 'out' when it is left out, null while nobody can tell. */
export type ColumnAs<M extends string> = M | 'out' | null;

/** The words of one kind of table: what its columns may be, and what people call them. */
export interface Vocabulary<M extends string> {
	readonly meanings: readonly M[];
	/** Headings people write, in small letters without spaces and dots. */
	readonly words: Readonly<Record<M, string>>;
	/** Headings that may mean several things; which, the likeliest first, by what else there is. */
	readonly doubtful: readonly {
		readonly words: readonly string[];
		readonly meanings: (columns: readonly (string | null)[]) => readonly M[];
	}[];
	/** Without these no row can be read. */
	readonly needed: readonly M[];
	/** Columns of figures, by which the decimal sign is told. */
	readonly figures: readonly M[];
	/** Not left out for a word nobody knows, where a column of whole numbers may be it. */
	readonly counted: M | null;
	/** What its rows are, in words: 'a part', 'each part', 'parts'. */
	readonly row: { readonly one: string; readonly each: string };
}

type Words = Pick<Vocabulary<string>, 'words' | 'doubtful' | 'meanings'>;

/** Does a cell read like the heading of a column? */
export function isHeading(cell: string, of: Words): boolean {
	const { word } = headingOf(cell);
	return meaningOf(word, of) !== null || of.doubtful.some(({ words }) => words.includes(word));
}

function meaningOf<M extends string>(
	word: string,
	{ words, meanings }: Pick<Vocabulary<M>, 'words' | 'meanings'>,
): M | null {
	// The last one listed goes before, as in a list that is filled in turn.
	return meanings.findLast((meaning) => words[meaning].split(' ').includes(word)) ?? null;
}

/** What the columns are by their headings; a heading nobody knows is left out. */
export function columnsOf<M extends string>(
	headings: readonly string[],
	of: Vocabulary<M>,
): ColumnAs<M>[] {
	const words = headings.map((heading) => headingOf(heading).word);
	const columns = words.map((word): ColumnAs<M> => meaningOf(word, of) ?? 'out');
	for (const { words: doubtful, meanings } of of.doubtful)
		settle(words, columns, doubtful, meanings(columns));
	// Of two columns by one name nobody knows which is meant.
	return columns.map((column, i) =>
		columns.indexOf(column) < i && column !== 'out' ? null : column,
	);
}

/** Doubtful words take the first meaning that is still free; none left, the person is asked. */
function settle<M extends string>(
	words: readonly string[],
	columns: ColumnAs<M>[],
	doubtful: readonly string[],
	meanings: readonly M[],
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
