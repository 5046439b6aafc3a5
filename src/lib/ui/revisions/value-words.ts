import type { Ruler } from '../../measure';
import type { Choice, Entry } from '../entries';
import { showNumber, showStored } from '../fields';

/** How values are written for the person who reads them. */
export interface Manner {
	readonly ruler: Ruler;
	/** Three letters: 'EUR'. */
	readonly currency: string;
}

/** A text longer than this is cut: the whole of it stands in its field. */
const LONGEST = 80;

/**
 * What a value of a job file says, as its form shows it; whatever it is, for a file holds what was
 * typed.
 *
 * @param entry its form; null where no form knows it
 */
export function valueWords(entry: Entry | null, value: unknown, manner: Manner): string {
	if (value === undefined || value === '') return 'nothing';
	if (value === null) return 'none';
	if (typeof value === 'boolean') return value ? 'yes' : 'no';
	if (entry?.kind === 'kinds') {
		const way = entry.ways.find((each) => each.is(value));
		if (way) return way.label;
	}
	if (Array.isArray(value)) return value.length === 0 ? 'none' : String(value.length);
	if (typeof value === 'object') return nameOf(value) || 'set';
	return shortened(entry ? typedWords(entry, value, manner) : String(value));
}

/** What a thing goes by: its name, else its mark; '' for neither. */
export function nameOf(thing: unknown): string {
	if (typeof thing !== 'object' || thing === null) return '';
	const { name, id } = thing as { readonly name?: unknown; readonly id?: unknown };
	return [name, id].find((word): word is string => typeof word === 'string' && word !== '') ?? '';
}

function typedWords(entry: Entry, value: unknown, { ruler, currency }: Manner): string {
	if (entry.kind === 'choice') return optionOf(entry, value);
	if (entry.kind === 'length') return withUnit(showStored(value, ruler), ruler.unit);
	if (entry.kind === 'money') return withUnit(showNumber(value, ruler.decimal), currency);
	if (entry.kind === 'number') return withUnit(showNumber(value, ruler.decimal), entry.unit);
	return String(value);
}

function optionOf({ options }: Choice, value: unknown): string {
	return options.find((option) => option.value === value)?.label ?? String(value);
}

/** A text that was typed with its unit has one already. */
function withUnit(text: string, unit: string): string {
	return unit !== '' && /[\d/]$/.test(text) ? `${text} ${unit}` : text;
}

function shortened(text: string): string {
	if (text.startsWith('data:')) return 'a picture';
	return text.length > LONGEST ? `${text.slice(0, LONGEST)} …` : text;
}
