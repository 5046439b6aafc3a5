/** What a key or an index of a value holds, or undefined where it has none of its own. */
export function inside(value: unknown, step: PropertyKey): unknown {
	if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step)) return undefined;
	return (value as Record<PropertyKey, unknown>)[step];
}

/** What lies at the end of a path, or undefined where nothing does. */
export function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
	return path.reduce(inside, value);
}
