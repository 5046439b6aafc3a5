import { isThing } from './shape';

/**
 * Which thing of the list before each thing of the list after is: the very same object, else the
 * one with the same mark in its field `id`, else the one in the same place. Null for a new one.
 */
export function matchThings(
	before: readonly unknown[],
	after: readonly unknown[],
): (number | null)[] {
	const free = new Set(before.keys());
	const found: (number | null)[] = after.map(() => null);
	const pair = (places: (item: unknown, i: number) => number | undefined): void =>
		after.forEach((item, i) => {
			const place = found[i] === null ? places(item, i) : undefined;
			if (place === undefined || !free.delete(place)) return;
			found[i] = place;
		});
	const same = new Map(before.map((item, i) => [item, i]));
	pair((item) => same.get(item));
	const marked = new Map<unknown, number>();
	for (const i of free) marked.set(idOf(before[i]), i);
	pair((item) => (idOf(item) === undefined ? undefined : marked.get(idOf(item))));
	pair((_, i) => i);
	return found;
}

const idOf = (item: unknown): unknown =>
	isThing(item) && typeof item['id'] === 'string' ? item['id'] : undefined;

/**
 * Of a row of texts the places of a longest rising part: what may stay where it is when the rest is
 * put in order (patience sorting).
 */
export function longestRise(row: readonly (string | null)[]): Set<number> {
	const ends: number[] = [];
	const before = new Map<number, number | undefined>();
	row.forEach((text, i) => {
		if (text === null) return;
		let [low, high] = [0, ends.length];
		while (low < high) {
			const middle = (low + high) >> 1;
			if ((row[ends[middle] ?? 0] ?? '') < text) low = middle + 1;
			else high = middle;
		}
		before.set(i, ends[low - 1]);
		ends[low] = i;
	});
	const rise = new Set<number>();
	for (let i = ends.at(-1); i !== undefined; i = before.get(i)) rise.add(i);
	return rise;
}
