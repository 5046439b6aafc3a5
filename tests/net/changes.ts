import { job, type JobFile } from '../../src/lib/job/job';
import { LISTS_OF_MARKS } from '../../src/lib/job/marks';
import { inside, valueAt } from '../../src/lib/job/problems/value-at';
import { z } from '../../src/lib/job/zod';
import { bare, isLength, otherValues, type Marks } from './other-values';

type Schema = z.core.$ZodType;
type Path = readonly (string | number)[];

/** One field of a job with another value in it. */
export interface Change {
	readonly base: JobFile;
	readonly path: Path;
	/**
	 * The field, whichever entry of a list it belongs to, and of which form of a thing:
	 * 'boxes[].vents[](round).wall'.
	 */
	readonly field: string;
	readonly value: unknown;
}

/** Every change of one field of this job. */
export function changesOf(base: JobFile): Change[] {
	return [...walk(job, base, { path: [], field: '' }, marksIn(base))].map((c) => ({ ...c, base }));
}

/** Changes alike are those that put the same into the same field, whatever the job. */
export function likeness({ base, path, field, value }: Change): string {
	const was = valueAt(base, path);
	const near = typeof was === 'number' && (value === was + 1 || value === was * 1.1);
	return `${field} = ${near ? (value === was + 1 ? 'one more' : 'a tenth more') : JSON.stringify(value)}`;
}

type Found = Omit<Change, 'base'>;
type Place = Pick<Change, 'path' | 'field'>;

function* walk(schema: Schema, value: unknown, at: Place, marks: Marks): Generator<Found> {
	const of = bare(schema);
	if (at.path.length > 0)
		for (const other of otherValues(of, value, marks)) yield { ...at, value: other };
	if (typeof value !== 'object' || value === null) return;
	const tag = inside(value, 'kind') ?? inside(value, 'by');
	const form = of.schema instanceof z.ZodUnion && typeof tag === 'string' ? `(${tag})` : '';
	for (const [key, inner] of innerOf(of.schema, value)) {
		const step = typeof key === 'number' ? '[]' : at.field === '' ? key : `.${key}`;
		const place = { path: [...at.path, key], field: at.field + form + step };
		yield* walk(inner, inside(value, key), place, marks);
	}
}

function innerOf(schema: Schema, value: object): [string | number, Schema][] {
	if (isLength(schema)) return [];
	if (schema instanceof z.ZodObject) return Object.entries(schema.shape);
	if (schema instanceof z.ZodArray && Array.isArray(value))
		return value.map((_, i) => [i, schema.element]);
	if (schema instanceof z.ZodTuple) return schema.def.items.map((item, i) => [i, item]);
	if (schema instanceof z.ZodRecord)
		return Object.keys(value).map((key) => [key, schema.valueType]);
	if (schema instanceof z.ZodUnion) {
		const meant = schema.options.find((o) => z.safeParse(o, value).success);
		return meant ? innerOf(bare(meant).schema, value) : [];
	}
	return [];
}

function marksIn(file: JobFile): Marks {
	const ids = (list: unknown): string[] =>
		Array.isArray(list) ? list.map((entry) => String(inside(entry, 'id'))) : [];
	return Object.fromEntries(
		Object.entries(LISTS_OF_MARKS).map(([to, path]) => [
			to,
			ids(
				valueAt(
					file,
					path.map((step) => (step === '*' ? 0 : step)),
				),
			),
		]),
	);
}

/** The job with that change in it, the rest untouched. */
export function changed({ base, path, value }: Change): unknown {
	const file: unknown = structuredClone(base);
	const holder = valueAt(file, path.slice(0, -1)) as Record<string | number, unknown>;
	const last = path.at(-1)!;
	if (value === undefined) Reflect.deleteProperty(holder, last);
	else holder[last] = structuredClone(value);
	return file;
}

/** The job with everything said in it that is usual where it says nothing. */
export function outspoken(file: JobFile): JobFile {
	return filled(job, file) as JobFile;
}

function filled(schema: Schema, value: unknown): unknown {
	const of = bare(schema);
	const now = value === undefined ? of.usual : value;
	if (typeof now !== 'object' || now === null) return now;
	const all = innerOf(of.schema, now).map(
		([key, inner]) => [key, filled(inner, inside(now, key))] as const,
	);
	if (all.length === 0) return now;
	if (Array.isArray(now)) return all.map(([, v]) => v);
	return Object.fromEntries(all.filter(([, v]) => v !== undefined));
}
