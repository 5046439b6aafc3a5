import type { Choice, Entry, Field, Group, Kinds, Simple, Way } from './entry';
import { helpOf, labelOf, optionLabel, unitOf } from './labels';

/** What this file needs to know of a schema of the job room; the schema library itself is not imported here. */
export interface Schema {
	readonly description?: string | undefined;
	readonly def: Def;
}

interface Def {
	readonly type: string;
	readonly innerType?: Schema;
	readonly defaultValue?: unknown;
	readonly in?: Schema;
	readonly shape?: Readonly<Record<string, Schema>>;
	readonly element?: Schema;
	readonly options?: readonly Schema[];
	readonly discriminator?: string;
	readonly values?: readonly (string | number)[];
	readonly entries?: Readonly<Record<string, string>>;
	readonly items?: readonly Schema[];
	readonly valueType?: Schema;
	readonly checks?: readonly { readonly _zod: { readonly def: Check } }[];
}

interface Check {
	readonly check: string;
	readonly value?: number;
	readonly minimum?: number;
	readonly maximum?: number;
	readonly format?: string;
	readonly pattern?: RegExp;
}

interface Core {
	readonly schema: Schema;
	readonly description: string;
	readonly optional: boolean;
	readonly nullable: boolean;
	readonly fallback: unknown;
}

const known = new WeakMap<Schema, Map<string, Entry>>();

/** The form of a schema kept under `key` of its parent. Throws `bug:` on a kind of schema no form knows. */
export function readSchema(schema: Schema, key: string): Entry {
	const made = known.get(schema) ?? new Map<string, Entry>();
	known.set(schema, made);
	let entry = made.get(key);
	if (!entry) made.set(key, (entry = entryOf(unwrap(schema), key)));
	return entry;
}

/** Takes off the layers that say default, optional and nullable. */
function unwrap(schema: Schema): Core {
	let here = schema;
	let description = '';
	let optional = false;
	let nullable = false;
	let fallback: unknown;
	for (;;) {
		description ||= here.description ?? '';
		const { type, innerType, defaultValue } = here.def;
		if (!innerType) return { schema: here, description, optional, nullable, fallback };
		if (type === 'optional' || type === 'default' || type === 'prefault') optional = true;
		if (type === 'nullable') nullable = true;
		if (type === 'default' || type === 'prefault') fallback = defaultValue;
		here = innerType;
	}
}

function entryOf(core: Core, key: string): Entry {
	const { def } = core.schema;
	const said = {
		label: labelOf(core.description, key),
		help: helpOf(core.description, key),
		optional: core.optional,
		nullable: core.nullable,
		fallback: core.fallback,
	};
	const simple = (kind: Simple['kind'], whole = false): Simple => ({
		...said,
		kind,
		whole,
		unit: unitOf(core.description, key),
		least: bounds(def).least,
	});
	switch (def.type) {
		case 'pipe':
			return simple(def.in?.def.type === 'number' ? 'money' : 'length');
		case 'number':
			return simple(
				'number',
				checks(def).some((c) => c.format === 'safeint'),
			);
		case 'boolean':
			return simple('tick');
		case 'string':
			return textEntry(def, key, said, simple);
		case 'enum':
			return { ...said, kind: 'choice', options: choices(key, Object.values(def.entries ?? {})) };
		case 'literal':
			return { ...said, kind: 'choice', options: choices(key, def.values ?? []) };
		case 'object':
			return { ...said, kind: 'group', fields: fieldsOf(def.shape ?? {}) };
		case 'tuple':
			return { ...said, kind: 'group', fields: tupleFields(def.items ?? []) };
		case 'array':
			return { ...said, kind: 'list', item: readSchema(def.element!, key), ...length(def) };
		case 'record':
			return { ...said, kind: 'boards', item: readSchema(def.valueType!, key) };
		case 'union':
			return unionEntry(def, key, said, simple);
		default:
			throw new Error(`bug: no form for a ${def.type} at ${key}`);
	}
}

type Said = Omit<Choice, 'kind' | 'options'>;
type MakeSimple = (kind: Simple['kind']) => Simple;

const REFERS: Readonly<Record<string, 'materials' | 'cloths' | 'saws' | 'layers'>> = {
	material: 'materials',
	cloth: 'cloths',
	neighbourCloth: 'cloths',
	thingCloth: 'cloths',
	wallCloth: 'cloths',
	saw: 'saws',
	on: 'layers',
};

function textEntry(def: Def, key: string, said: Said, simple: MakeSimple): Entry {
	const pattern = checks(def).find((c) => c.pattern)?.pattern?.source ?? '';
	if (pattern.startsWith('^(front')) {
		return { ...said, kind: 'choice', options: choices(key, BOARDS) };
	}
	const to = REFERS[key];
	if (to) return { ...said, kind: 'refers', to };
	if (key === 'id') return simple('mark');
	return simple((bounds(def).most ?? 0) >= 1000 ? 'note' : 'text');
}

function unionEntry(def: Def, key: string, said: Said, simple: MakeSimple): Entry {
	const options = def.options ?? [];
	if (def.discriminator !== undefined) return kinds(options, said, def.discriminator, key);
	const types = options.map((o) => o.def.type);
	if (types.every((t) => t === 'literal')) {
		const values = options.flatMap((o) => o.def.values ?? []);
		return { ...said, kind: 'choice', options: choices(key, values) };
	}
	if (types.join() === 'number,pipe') return simple('volume');
	return kinds(options, said, null, key);
}

/** The ways of a union: told apart by their tag, or by the first field each one has. */
function kinds(options: readonly Schema[], said: Said, tag: string | null, key: string): Kinds {
	const objects = options.filter((o) => o.def.type === 'object').length;
	const ways = options.flatMap((option): Way[] => {
		if (option.def.type === 'enum') {
			return Object.values(option.def.entries ?? {}).map((value) => plainWay(value, key));
		}
		return [objectWay(option, tag, key, objects === 1)];
	});
	return { ...said, kind: 'kinds', ways };
}

function plainWay(value: string, key: string): Way {
	const is = (seen: unknown): boolean => seen === value;
	return { name: value, label: optionLabel(key, value), is, plain: value, tag: null, entry: null };
}

function objectWay(option: Schema, tag: string | null, key: string, alone: boolean): Way {
	const entry = readSchema(option, key) as Group;
	const first = Object.keys(option.def.shape ?? {})[0] ?? '';
	const name = tag === null ? first : String(option.def.shape?.[tag]?.def.values?.[0] ?? '');
	const is = (seen: unknown): boolean => {
		if (typeof seen !== 'object' || seen === null) return false;
		if (tag !== null) return (seen as Readonly<Record<string, unknown>>)[tag] === name;
		return alone || first in seen;
	};
	const fields = entry.fields.filter((f) => f.key !== tag);
	const label = optionLabel(key, name);
	return { name, label, is, plain: undefined, tag, entry: { ...entry, fields } };
}

function fieldsOf(shape: Readonly<Record<string, Schema>>): Field[] {
	return Object.entries(shape).map(([key, schema]) => ({ key, entry: readSchema(schema, key) }));
}

function tupleFields(items: readonly Schema[]): Field[] {
	return items.map((schema, i) => {
		const entry = readSchema(schema, String(i));
		return { key: i, entry: { ...entry, label: i === 0 ? 'First' : 'Second' } };
	});
}

function choices(key: string, values: readonly (string | number)[]): Choice['options'] {
	return values.map((value) => ({ value, label: optionLabel(key, String(value)) }));
}

function checks(def: Def): Check[] {
	return (def.checks ?? []).map((c) => c._zod.def);
}

function bounds(def: Def): { least: number | null; most: number | null } {
	let least: number | null = null;
	let most: number | null = null;
	for (const c of checks(def)) {
		if (c.check === 'greater_than') least = c.value ?? null;
		if (c.check === 'min_length') least = c.minimum ?? null;
		if (c.check === 'less_than') most = c.value ?? null;
		if (c.check === 'max_length') most = c.maximum ?? null;
	}
	return { least, most };
}

function length(def: Def): { least: number; most: number } {
	const { least, most } = bounds(def);
	return { least: least ?? 0, most: most ?? 1000 };
}

const BOARDS = [
	...['front', 'back', 'top', 'bottom', 'left', 'right', 'step-face', 'step-top', 'cut'],
	...Array.from({ length: 12 }, (_, i) => `side-${i + 1}`),
];
