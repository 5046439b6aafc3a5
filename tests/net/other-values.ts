import { notes, z, type Note } from '../../src/lib/job/zod';

/*
 * What else could stand in a field of the job: over its whole range and beyond it, from its schema.
 */

type Schema = z.core.$ZodType;

/** A schema without what is put round it, and what that says. */
interface Bare {
	readonly schema: Schema;
	readonly note: Note;
	readonly nullable: boolean;
	readonly optional: boolean;
	/** What it is when the file says nothing. */
	readonly usual: unknown;
}

export function bare(schema: Schema, so: Omit<Bare, 'schema'> = NOTHING): Bare {
	const told = { ...so, note: { ...notes.get(schema), ...so.note } };
	if (schema instanceof z.ZodDefault || schema instanceof z.ZodPrefault)
		return bare(schema.def.innerType, { ...told, usual: schema.def.defaultValue, optional: true });
	if (schema instanceof z.ZodOptional)
		return bare(schema.def.innerType, { ...told, optional: true });
	if (schema instanceof z.ZodNullable)
		return bare(schema.def.innerType, { ...told, nullable: true });
	if (schema instanceof z.ZodPipe) return bare(schema.def.in, told);
	return { schema, ...told };
}

const NOTHING = { note: {}, nullable: false, optional: false, usual: undefined };

/** Millimetres from below nothing to out of reach. */
const LENGTHS = [-1, 0, 0.01, 3, 145, 2500, 100_000, 1e7];
const TEXTS = ['', 'else'];
/** Marks: of nothing, and no mark at all. */
const MARKS = ['no-such-thing', '?'];

/** Marks of things of a kind: each may stand where another is named. */
export type Marks = Readonly<Record<string, readonly string[]>>;

/** Other values for a field that holds `was`; unions, lists and records as wholes. */
export function otherValues(of: Bare, was: unknown, marks: Marks): unknown[] {
	const { nullable, optional } = of;
	const gone = [...(nullable ? [null] : []), ...(optional && isLeaf(of) ? [of.usual] : [])];
	const others = [...gone, ...ofKind(of, was, marks)];
	return others.filter((other) => JSON.stringify(other) !== JSON.stringify(was));
}

const isLeaf = ({ schema, usual }: Bare): boolean =>
	usual === undefined && !(schema instanceof z.ZodObject);

function ofKind(of: Bare, was: unknown, marks: Marks): unknown[] {
	const { schema, note } = of;
	if (isLength(schema)) return [...LENGTHS, ...near(was ?? of.usual), 'much'];
	if (schema instanceof z.ZodNumber) return [...numbers(schema), ...near(was ?? of.usual), 'much'];
	if (schema instanceof z.ZodBoolean) return [true, false, 'maybe'];
	if (schema instanceof z.ZodEnum) return [...schema.options, 'no-such-word'];
	if (note.refersTo) return [...(marks[note.refersTo] ?? []), ...MARKS];
	if (note.edit === 'mark' || note.edit === 'text') return ['another', ...MARKS];
	if (schema instanceof z.ZodString) return [...words(note), ...TEXTS];
	if (schema instanceof z.ZodArray) return lists(schema, was, marks);
	if (schema instanceof z.ZodObject)
		return was === undefined || was === null ? [sample(schema, marks)] : [];
	if (isUnion(schema)) return schema.options.map((o) => sample(o, marks));
	return [];
}

const words = (note: Note): string[] => Object.keys(note.options ?? {});
const near = (was: unknown): number[] => (typeof was === 'number' ? [was + 1, was * 1.1] : []);

function numbers(schema: z.ZodNumber): number[] {
	const low = Math.max(schema.minValue ?? -1e9, -1e9);
	const high = Math.min(schema.maxValue ?? 1e9, 1e9);
	return [low, high, low - 1, high + 1, 0.37, Math.round((low + high) / 2), 1e308];
}

function lists(schema: z.ZodArray, was: unknown, marks: Marks): unknown[] {
	const now = Array.isArray(was) ? (was as unknown[]) : [];
	if (now.length === 0) return [[sample(schema.element, marks)]];
	return [[], [...now, now.at(-1)], ...(now.length > 1 ? [now.slice(1), now.toReversed()] : [])];
}

const isUnion = (schema: Schema): schema is z.ZodUnion => schema instanceof z.ZodUnion;

/** A number of millimetres, or a text with its unit. */
export function isLength(schema: Schema): boolean {
	return (
		isUnion(schema) &&
		schema.options.some((o) => bare(o).schema instanceof z.ZodNumber) &&
		schema.options.some((o) => bare(o).schema instanceof z.ZodString)
	);
}

/** The least that a schema takes. */
function sample(of: Schema, marks: Marks): unknown {
	const { schema, note, nullable, usual, optional } = bare(of);
	if (usual !== undefined) return usual;
	if (optional) return undefined;
	if (nullable) return null;
	if (isLength(schema)) return 100;
	if (schema instanceof z.ZodNumber) return Math.max(schema.minValue ?? 1, 1);
	if (schema instanceof z.ZodBoolean) return true;
	if (schema instanceof z.ZodEnum) return schema.options[0];
	if (schema instanceof z.ZodLiteral) return [...schema.values][0];
	if (schema instanceof z.ZodString)
		return words(note)[0] ?? marks[note.refersTo ?? '']?.[0] ?? 'new';
	if (schema instanceof z.ZodArray)
		return Array.from({ length: least(schema) }, () => sample(schema.element, marks));
	if (schema instanceof z.ZodTuple) return schema.def.items.map((item) => sample(item, marks));
	if (isUnion(schema)) return sample(schema.options[0]!, marks);
	if (schema instanceof z.ZodObject)
		return Object.fromEntries(
			Object.entries(schema.shape as Record<string, Schema>)
				.filter(([, field]) => !bare(field).optional)
				.map(([key, field]) => [key, sample(field, marks)]),
		);
	return {};
}

function least(schema: z.ZodArray): number {
	const found = (schema as unknown as { _zod: { bag: { minimum?: number } } })._zod.bag.minimum;
	return Math.max(found ?? 0, 1);
}
