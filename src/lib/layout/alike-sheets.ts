import type { BoardLayouts } from './layouts';

/**
 * Sheets in groups that are wholly alike, by the indexes of their layouts, the lowest first: one
 * kind of sheet, the same parts in the same places, the same cuts and offcuts. One page serves them
 * all.
 */
export function alikeSheets({ answer, sources }: BoardLayouts): readonly (readonly number[])[] {
	const groups = new Map<string, number[]>();
	answer.layouts.forEach((layout, i) => {
		const { placed } = layout;
		const at = placed.map(({ id, x, y, length, width, turn }) => [id, x, y, length, width, turn]);
		const key = JSON.stringify([sources[i], { ...layout, copy: 0, placed: [] }, at]);
		groups.set(key, [...(groups.get(key) ?? []), i]);
	});
	return [...groups.values()];
}
