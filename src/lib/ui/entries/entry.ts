import type { ListOfMarks, Note } from '../../job';

/**
 * One thing of a job file as a form shows it. Read from the schema (read-schema.ts), so that no
 * field is ever forgotten.
 */
export type Entry = Simple | Choice | Refers | Group | List | Kinds | Boards;

export interface Said {
	/** In trade words: 'Width'. */
	readonly label: string;
	/** What it is, in a sentence; '' when the label says it all. */
	readonly help: string;
	/** May be left out of the file. */
	readonly optional: boolean;
	/** May be null: empty, none. */
	readonly nullable: boolean;
	/** What is taken when it is left out; undefined when nothing is. */
	readonly fallback: unknown;
	/** Where that is taken from when it is left out, if not from what is usual alone. */
	readonly inherits?: Note['inherits'];
}

export interface Simple extends Said {
	readonly kind: 'length' | 'number' | 'money' | 'volume' | 'text' | 'note' | 'tick' | 'mark';
	/** Of a number: its unit, and whether it is a whole one. */
	readonly unit: string;
	readonly whole: boolean;
	readonly least: number | null;
}

export interface Choice extends Said {
	readonly kind: 'choice';
	readonly options: readonly { readonly value: string | number; readonly label: string }[];
}

/** The mark of something else: a board of the rack, a cloth, a saw, a layer of the same panel. */
export interface Refers extends Said {
	readonly kind: 'refers';
	readonly to: ListOfMarks;
}

export interface Group extends Said {
	readonly kind: 'group';
	readonly fields: readonly Field[];
}

export interface Field {
	readonly key: string | number;
	readonly entry: Entry;
}

export interface List extends Said {
	readonly kind: 'list';
	readonly item: Entry;
	readonly most: number;
	readonly least: number;
}

/** One of several forms: a shape, a vent. */
export interface Kinds extends Said {
	readonly kind: 'kinds';
	readonly ways: readonly Way[];
}

export interface Way {
	readonly name: string;
	readonly label: string;
	/** Is this the way the value has now? */
	readonly is: (value: unknown) => boolean;
	/** The value itself when the way has no fields ('none'); undefined otherwise. */
	readonly plain: unknown;
	readonly tag: string | null;
	readonly entry: Group | null;
}

/** Things kept by the name of a board of the box. */
export interface Boards extends Said {
	readonly kind: 'boards';
	readonly item: Entry;
}
