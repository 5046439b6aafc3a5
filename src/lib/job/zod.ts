/**
 * The door through which the schema library enters, and what each part of the schema says of
 * itself.
 */
import { config, z } from 'zod';
import type { ListOfMarks } from './marks';

// A job is read once a plan: compiling a parser for each part of the schema takes longer than it
// saves.
config({ jitless: true });

export { z };

/** What a form has to know of a part of the schema beyond its type. */
export interface Note<Word extends string = string> {
	/** In trade words: 'Width'. */
	readonly label?: string;
	/**
	 * Begins small where it goes on from the label ('from the left end …'), large where it is a
	 * sentence of its own.
	 */
	readonly help?: string;
	/**
	 * Of a number: its unit. A length, an amount and a volume have theirs from the ruler and the
	 * shop.
	 */
	readonly unit?: string;
	/** How it is edited, where its type leaves that open. */
	readonly edit?: 'length' | 'money' | 'volume' | 'text' | 'note' | 'mark';
	/** Of a mark that is not the thing's own: the list the thing stands in that it names. */
	readonly refersTo?: ListOfMarks;
	/**
	 * What choices and forms are called whose own word says too little. Of a text: all there is to
	 * choose from.
	 */
	readonly options?: Readonly<Partial<Record<Word, string>>>;
	/**
	 * Of a field of a list's thing that may be left out: it is then as the same field of the thing
	 * that stands beside the list under this name, and as is usual where that one says nothing.
	 * `as`: so in words ('as every edge').
	 */
	readonly inherits?: { readonly from: string; readonly usual: unknown; readonly as: string };
}

/** What a choice of this type may be: its values, else the tags of its forms, else their fields. */
type WordOf<T> = T extends string
	? T
	: T extends { kind: infer Tag extends string } | { by: infer Tag extends string }
		? Tag
		: T extends object
			? keyof T & string
			: never;

type NoteOn<S extends z.ZodType> = Note<WordOf<z.input<S>>>;

/** The notes, by the schema they were given with. What a schema is made of passes its note on. */
export const notes = z.registry<Note>();

/** The schema with a note on it that holds wherever it is used. */
export function noted<S extends z.ZodType>(schema: S, note: NoteOn<S>): S {
	const copy = copyOf(schema, note);
	notes.add(copy, note);
	return copy;
}

/** A field of the job: its schema, and what a person is told of it. */
export function field<S extends z.ZodType>(
	schema: S,
	note: NoteOn<S> & { readonly label: string },
): S {
	return noted(schema, note);
}

/**
 * A copy, since one schema serves many fields. It takes over the note of what it is a copy of, if
 * there is one.
 */
function copyOf<S extends z.ZodType>(schema: S, { label, help }: Note): S {
	if (help) return schema.describe(describing(help, label));
	return notes.get(schema) ? schema.clone() : schema.clone(schema.def);
}

/** The words of the JSON schema. */
function describing(help: string, label = ''): string {
	const goesOn = help[0] === help[0]?.toLowerCase();
	return goesOn ? `${label}: ${help}` : help;
}
