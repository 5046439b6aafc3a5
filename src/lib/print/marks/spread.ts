import { lastOf } from '../../measure';

/**
 * Slots at least `gap` apart, in order, as near to the wanted places as that allows, inside the
 * room.
 */
export function spread(
	wanted: readonly number[],
	gap: number,
	room: readonly [number, number],
): number[] {
	// Neighbours that would touch join into a group, which lies centred on its members' wishes.
	const groups: { sum: number; size: number }[] = [];
	const start = (g: { sum: number; size: number }) => g.sum / g.size - ((g.size - 1) * gap) / 2;
	const clamped = (g: { sum: number; size: number }) =>
		Math.max(room[0], Math.min(start(g), room[1] - (g.size - 1) * gap));
	for (const place of wanted) {
		groups.push({ sum: place, size: 1 });
		for (let last = lastOf(groups), before = groups.at(-2); before !== undefined;) {
			if (clamped(before) + before.size * gap <= clamped(last)) break;
			groups.splice(-2, 2, { sum: before.sum + last.sum, size: before.size + last.size });
			last = lastOf(groups);
			before = groups.at(-2);
		}
	}
	return groups.flatMap((g) => [...Array(g.size).keys()].map((i) => clamped(g) + i * gap));
}
