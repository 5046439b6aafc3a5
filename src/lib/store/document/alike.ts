import { isThing } from './shape';

/**
 * The value `now` made of the parts of `old` that are the same in it: what has not changed stays
 * the very same object, and fields keep their order, so that screens and files stay as they were.
 */
export function likeBefore(old: unknown, now: unknown): unknown {
	if (Object.is(old, now)) return old;
	if (Array.isArray(old) && Array.isArray(now)) return likeList(old, now);
	return isThing(old) && isThing(now) ? likeObject(old, now) : now;
}

function likeList(old: readonly unknown[], now: readonly unknown[]): readonly unknown[] {
	const places = new Map<unknown, number>();
	old.forEach((item, i) => places.set(markOf(item) ?? i, i));
	const items = now.map((item, i) => likeBefore(old[places.get(markOf(item) ?? i) ?? i], item));
	return items.length === old.length && items.every((item, i) => item === old[i]) ? old : items;
}

const markOf = (item: unknown): string | undefined =>
	isThing(item) && typeof item['id'] === 'string' ? item['id'] : undefined;

function likeObject(
	old: Readonly<Record<string, unknown>>,
	now: Readonly<Record<string, unknown>>,
): Readonly<Record<string, unknown>> {
	const had = Object.keys(old).filter((key) => Object.hasOwn(now, key));
	const has = Object.keys(now).filter((key) => !Object.hasOwn(old, key));
	const entries = [...had, ...has].map(
		(key) => [key, Object.hasOwn(old, key) ? likeBefore(old[key], now[key]) : now[key]] as const,
	);
	const same = entries.length === Object.keys(old).length;
	return same && entries.every(([key, value]) => value === old[key])
		? old
		: Object.fromEntries(entries);
}
