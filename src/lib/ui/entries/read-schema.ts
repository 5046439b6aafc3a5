import { notes, z, type Note } from '../../job';
import type { Choice, Entry, Field, Group, Kinds, List, Said, Simple, Way } from './entry';

/*
 * The form of a schema. What a person is told of a field stands in the schema's notes; the rest is
 * what zod says of the schema in public.
 */

type Schema = z.core.$ZodType;
type Words = Readonly<Partial<Record<string, string>>>;

interface Core {
	readonly schema: Schema;
	readonly note: Note;
	readonly optional: boolean;
	readonly nullable: boolean;
	readonly fallback: unknown;
}

const known = new WeakMap<Schema, Entry>();

/** The form of a schema. Throws `bug:` on a kind of schema no form knows. */
export function readSchema(schema: Schema): Entry {
	let entry = known.get(schema);
	if (!entry) known.set(schema, (entry = entryOf(unwrap(schema))));
	return entry;
}

/**
 * Takes off the layers that say default, optional and nullable. A note on an outer layer goes
 * before one farther in.
 */
function unwrap(schema: Schema): Core {
	const note = notes.get(schema);
	if (schema instanceof z.ZodDefault || schema instanceof z.ZodPrefault) {
		return { ...within(schema, note), optional: true, fallback: schema.def.defaultValue };
	}
	if (schema instanceof z.ZodOptional || schema instanceof z.ZodExactOptional) {
		return { ...within(schema, note), optional: true };
	}
	if (schema instanceof z.ZodNullable) return { ...within(schema, note), nullable: true };
	return { schema, note: note ?? {}, optional: false, nullable: false, fallback: undefined };
}

function within(layer: { unwrap(): Schema }, note: Note | undefined): Core {
	const inner = unwrap(layer.unwrap());
	return { ...inner, note: { ...inner.note, ...note } };
}

function entryOf({ schema, note, ...rest }: Core): Entry {
	const { optional, nullable, fallback } = rest;
	const said = {
		...{ label: note.label ?? '', help: sentence(note.help), optional, nullable, fallback },
		...(note.inherits ? { inherits: note.inherits } : {}),
	};
	const words = note.options ?? {};
	if (note.refersTo) return { ...said, kind: 'refers', to: note.refersTo };
	if (note.edit) return simple(said, note.edit);
	if (schema instanceof z.ZodString) {
		return note.options ? choice(said, Object.keys(words), words) : simple(said, 'text');
	}
	if (schema instanceof z.ZodNumber) return number(said, schema, note.unit);
	if (schema instanceof z.ZodBoolean) return simple(said, 'tick');
	const values = valuesOf(schema);
	if (values) return choice(said, values, words);
	return deepEntry(schema, said, words);
}

/** What has entries of its own. */
function deepEntry(schema: Schema, said: Said, words: Words): Entry {
	if (schema instanceof z.ZodObject) {
		return { ...said, kind: 'group', fields: fieldsOf(Object.entries<Schema>(schema.shape)) };
	}
	if (schema instanceof z.ZodTuple) {
		return { ...said, kind: 'group', fields: fieldsOf([...schema.def.items.entries()]) };
	}
	if (schema instanceof z.ZodArray) return list(said, schema);
	if (schema instanceof z.ZodRecord) {
		return { ...said, kind: 'boards', item: itemOf(said, schema.valueType) };
	}
	if (schema instanceof z.ZodDiscriminatedUnion) {
		return kinds(said, schema.options, words, schema.def.discriminator);
	}
	if (schema instanceof z.ZodUnion) return kinds(said, schema.options, words, null);
	throw new Error(
		`bug: no form for ${said.label || 'a schema'} of type ${(schema as z.ZodType).type}`,
	);
}

function simple(said: Said, kind: Simple['kind']): Simple {
	return { ...said, kind, whole: false, unit: '', least: null };
}

function number(said: Said, schema: z.ZodNumber, unit = ''): Simple {
	return { ...said, kind: 'number', whole: schema.isInt, unit, least: schema.minValue };
}

function choice(said: Said, values: readonly (string | number)[], words: Words): Choice {
	const options = values.map((value) => ({ value, label: wordOf(value, words) }));
	return { ...said, kind: 'choice', options };
}

/** All the values there are, of a choice among fixed ones; null of anything else. */
function valuesOf(schema: Schema): (string | number)[] | null {
	if (schema instanceof z.ZodEnum) return schema.options;
	if (schema instanceof z.ZodLiteral) return [...schema.values] as (string | number)[];
	if (!(schema instanceof z.ZodUnion)) return null;
	const each = (schema.options as Schema[]).map((o) =>
		o instanceof z.ZodLiteral ? valuesOf(o) : null,
	);
	return each.every((values) => values !== null) ? each.flat() : null;
}

function list(said: Said, schema: z.ZodArray): List {
	return { ...said, kind: 'list', item: itemOf(said, schema.element), ...limits(schema) };
}

/**
 * How many a list may hold: told by zod in its JSON schema only, where it does not matter what the
 * list is of.
 */
function limits(schema: z.ZodArray): { least: number; most: number } {
	const bare = schema.clone({ ...schema.def, element: z.unknown() });
	const { minItems = 0, maxItems = 1000 } = z.toJSONSchema(bare);
	return { least: minItems, most: maxItems };
}

/** One thing of several is called as they are, unless it has a name of its own. */
function itemOf({ label }: Said, schema: Schema): Entry {
	const item = readSchema(schema);
	return item.label === '' ? { ...item, label } : item;
}

/** The ways of a union: told apart by their tag, or by the first field each one has. */
function kinds(said: Said, options: readonly Schema[], words: Words, tag: string | null): Kinds {
	const objects = options.filter((option) => option instanceof z.ZodObject);
	const ways = options.flatMap((option): Way[] =>
		option instanceof z.ZodObject
			? [objectWay(option, words, tag, objects.length === 1)]
			: (valuesOf(option) ?? []).map((value) => plainWay(String(value), words)),
	);
	return { ...said, kind: 'kinds', ways };
}

function plainWay(value: string, words: Words): Way {
	const is = (seen: unknown): boolean => seen === value;
	return { name: value, label: wordOf(value, words), is, plain: value, tag: null, entry: null };
}

function objectWay(option: z.ZodObject, words: Words, tag: string | null, alone: boolean): Way {
	const entry = readSchema(option) as Group;
	const first = Object.keys(option.shape)[0] ?? '';
	const mark = tag === null ? undefined : option.shape[tag];
	const name = mark === undefined ? first : String(valuesOf(mark)?.[0] ?? '');
	const is = (seen: unknown): boolean => {
		if (typeof seen !== 'object' || seen === null) return false;
		if (tag !== null) return (seen as Readonly<Record<string, unknown>>)[tag] === name;
		return alone || first in seen;
	};
	const fields = entry.fields.filter((f) => f.key !== tag);
	return {
		name,
		label: wordOf(name, words),
		is,
		plain: undefined,
		tag,
		entry: { ...entry, fields },
	};
}

function fieldsOf(schemas: readonly (readonly [string | number, Schema])[]): Field[] {
	return schemas.map(([key, schema]) => ({ key, entry: readSchema(schema) }));
}

/** 'one-way' -> 'one way', unless there are better words. */
function wordOf(value: string | number, words: Words): string {
	return words[value] ?? String(value).replaceAll('-', ' ');
}

/** A help as it stands on the screen. */
function sentence(help = ''): string {
	if (help === '') return '';
	const full = help.endsWith('.') ? help : `${help}.`;
	return full.charAt(0).toUpperCase() + full.slice(1);
}
