import { nth } from '../../../measure';
import { beside, type Inflated } from '../../inflated';
import { type FenceLimits, type FenceStep, type Sequence, setting } from './held';
import type { SawRegion } from './regions';

/*
 * Parts laid by hand stay in their order: at each cut the one at either end comes off, as soon as
 * one side of the cut can be held against the fence.
 */

/** The parts of a region from one end or the other; null when the saw can take them in no order. */
export function keptSequence(r: SawRegion, limits: FenceLimits): Sequence | null {
	const sizes = r.parts.map((p) => (r.axis === 'x' ? p.w : p.h));
	const whole = sizes.reduce<number>((sum, size) => sum + size, 0) as Inflated;
	const hopeless = new Set<string>();
	const steps: FenceStep[] = [];
	const from = (low: number, high: number, left: Inflated): number | null => {
		if (low === high) return low;
		const key = `${low} ${high}`;
		if (hopeless.has(key)) return null;
		for (const end of ['low', 'high'] as const) {
			const at = end === 'low' ? low : high;
			const size = nth(sizes, at);
			const held = setting(size, left, limits);
			if (!held) continue;
			const fenceEnd = held.own === (end === 'low') ? 'low' : 'high';
			steps.push({ part: nth(r.parts, at), end, fence: held.fence, fenceEnd });
			const rest = beside(left, size);
			const last = end === 'low' ? from(low + 1, high, rest) : from(low, high - 1, rest);
			if (last !== null) return last;
			steps.pop();
		}
		hopeless.add(key);
		return null;
	};
	const last = from(0, r.parts.length - 1, whole);
	return last === null ? null : { steps, last: nth(r.parts, last) };
}
