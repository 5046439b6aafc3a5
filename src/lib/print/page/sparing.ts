import type { Plan } from '../../plan';
import { type Leaf, setPages } from './setting';
import { orUndrawn } from './undrawn';

/** More leaves than these are not tried another way: each is drawn once more for it. */
const MOST = 12;

/** Leaves told another way where that spares a page; no more of them than it takes. */
export function sparing(plan: Plan, leaves: readonly Leaf[]): Leaf[] {
	const others = otherWays(plan, leaves);
	const taken = (list: readonly Leaf[]): number => setPages(list).length;
	let found = leaves.map((leaf, i) => others.get(i) ?? leaf);
	const fewest = taken(found);
	if (others.size === 0 || fewest >= taken(leaves)) return [...leaves];
	for (const i of others.keys()) {
		const back = found.map((leaf, k) => (k === i ? (leaves[i] ?? leaf) : leaf));
		if (taken(back) === fewest) found = back;
	}
	return found;
}

/** By their place in the list, those that have another way and can be drawn so, if they are few. */
function otherWays(plan: Plan, leaves: readonly Leaf[]): Map<number, Leaf> {
	const ways = new Map<number, Leaf>();
	if (leaves.filter(({ instead }) => instead !== undefined).length > MOST) return ways;
	leaves.forEach((leaf, i) => {
		const { instead } = leaf;
		if (instead === undefined) return;
		const drawn = orUndrawn(plan, leaf.name, () => [{ ...leaf, blocks: instead() }]);
		for (const other of drawn) if (other.fault === leaf.fault) ways.set(i, other);
	});
	return ways;
}
