import type { SawModel } from '../model';

/** With fewer kinds of sheet the search looks at all of them. */
const FEW = 256;
/** Of a long rack: so many of the cheapest that hold a piece, so many spread over the others. */
const CHEAPEST = 8;
const SPREAD = 24;

/**
 * The kinds of sheet the search opens, cheapest first. Of a rack of thousands of remnants those
 * that hold a piece with the least left over, some of every larger size, which hold several, and
 * every kind that is to be had without end; the others are left on the rack. The bounds are of all
 * kinds.
 *
 * @returns indices into `model.kinds`
 */
export function kindsToOpen(model: SawModel): Int32Array {
	const { kinds, types } = model;
	if (kinds.length <= FEW) return Int32Array.from(kinds.keys());
	const endless = (i: number): boolean => kinds[i]?.count === Infinity;
	const chosen = new Set([...kinds.keys()].filter(endless));
	const rest = [...kinds.keys()].filter((i) => !endless(i));
	for (const { w, h, quarter } of types) {
		const fit = rest.filter((i) => holds(kinds[i], w, h) || (quarter && holds(kinds[i], h, w)));
		const step = Math.max(1, (fit.length - CHEAPEST) / SPREAD);
		for (const i of fit.slice(0, CHEAPEST)) chosen.add(i);
		for (let at = fit.length - 1; at >= CHEAPEST; at -= step) chosen.add(fit[Math.floor(at)] ?? 0);
	}
	return Int32Array.from([...chosen].sort((a, b) => a - b));
}

const holds = (kind: SawModel['kinds'][number] | undefined, w: number, h: number): boolean =>
	kind !== undefined && w <= kind.w && h <= kind.h;
