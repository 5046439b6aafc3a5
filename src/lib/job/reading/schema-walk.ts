import { nth } from '../../measure';
import { inside } from '../problems';
import { z } from '../zod';

type Schema = z.core.$ZodType;

/**
 * The part of a schema that answers for this place in a file; null where the schema has none.
 * `value` is the file.
 */
export function schemaAt(
	schema: Schema,
	path: readonly PropertyKey[],
	value: unknown,
): Schema | null {
	const bare = unwrap(schema, value);
	const [step, ...rest] = path;
	if (step === undefined) return bare;
	const next = child(bare, step);
	return next && schemaAt(next, rest, inside(value, step));
}

/** The fields an object of this schema may hold; none when it is no object. */
export function knownKeys(schema: Schema | null): readonly string[] {
	return schema instanceof z.ZodObject ? Object.keys(schema.shape) : [];
}

function child(schema: Schema, step: PropertyKey): Schema | null {
	if (schema instanceof z.ZodObject) {
		return (schema.shape as Record<PropertyKey, Schema>)[step] ?? null;
	}
	if (schema instanceof z.ZodArray) return schema.element;
	if (schema instanceof z.ZodRecord) return schema.valueType;
	if (schema instanceof z.ZodTuple) return (schema.def.items[Number(step)] as Schema) ?? null;
	return null;
}

/** Past defaults, nulls and transforms to what the file itself must look like. */
function unwrap(schema: Schema, value: unknown): Schema {
	if (
		schema instanceof z.ZodDefault ||
		schema instanceof z.ZodPrefault ||
		schema instanceof z.ZodOptional ||
		schema instanceof z.ZodNullable
	) {
		return unwrap(schema.def.innerType, value);
	}
	if (schema instanceof z.ZodPipe) return unwrap(schema.def.in, value);
	if (schema instanceof z.ZodLazy) return unwrap(schema.def.getter(), value);
	if (schema instanceof z.ZodUnion) return unwrap(branch(schema.options, value), value);
	return schema;
}

/** The branch a value means: the one whose fixed words it carries, else the first of its kind. */
function branch(options: readonly Schema[], value: unknown): Schema {
	const meant = options.find((option) => {
		const shape = unwrap(option, value);
		if (!(shape instanceof z.ZodObject)) return false;
		return Object.entries(shape.shape).some(
			([key, field]) =>
				field instanceof z.ZodLiteral && field.values.has(inside(value, key) as string),
		);
	});
	return meant ?? nth(options, 0);
}
