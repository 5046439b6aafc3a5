import type { Covering, Need } from '../design';
import { napOnRoll, type Path, type Problem, type Cloth } from '../job';
import { type Length, snap, showLength, ticks, type Ruler } from '../measure';
import { foamGlueNeed, glueNeed } from './adhesive';
import type { Blank } from './blank';
import { type ClothShape, coveringBlank, doubtsOf } from './marks';
import { fitToRoll } from './fit-to-roll';
import type { WrapShop } from './shop';
import type { Flap } from './girth';

export interface Wrapped {
	readonly blanks: readonly Blank[];
	readonly problems: readonly Problem[];
	readonly needs: readonly Need[];
	/** Seams in all of them together. */
	readonly seamLength: Length;
}

/**
 * The cloth of one covering: its blank with every mark on it. `path`: where in the job the covering
 * is asked for.
 */
export function wrapCovering(
	covering: Covering,
	cloth: Cloth,
	shop: WrapShop,
	path: Path,
): Wrapped {
	const { blank, shape, blocked, seams } = coveringBlank(covering, cloth, shop.ruler);
	const fitted = fitToRoll(
		blank,
		{ ...shop, nap: napOnRoll(cloth), column: cloth.repeatAcross, seams },
		path,
	);
	const problems = [
		...doubtsOf(covering.name, blank.verdicts ?? [], path),
		...crowded(covering.name, shape, shop.ruler, path),
		...unrelieved(blocked, path),
		...fitted.problems,
	];
	const { blanks } = fitted;
	const needs = [...foamGlueNeed(blanks, covering.name), glueNeed(blanks, covering.name)];
	const seamLength = ticks(fitted.seamLength * covering.count);
	return { blanks, problems, needs, seamLength };
}

/**
 * Edges that face each other nearer than both turn-unders: their flaps come out shorter than asked.
 */
function crowded(name: string, shape: ClothShape, ruler: Ruler, path: Path): Problem[] {
	const inWindows = shape.windows.flatMap((w) => w.flaps);
	return [
		...crowdedFlaps(shape.flaps, `${name}: in a slot of the outline`, ruler, path),
		...crowdedFlaps(inWindows, `${name}: in a window`, ruler, path),
	];
}

function crowdedFlaps(flaps: readonly Flap[], where: string, ruler: Ruler, path: Path): Problem[] {
	const short = flaps.filter((f) => f.folds && f.total < f.wanted - 1);
	if (short.length === 0) return [];
	const worst = short.reduce((a, b) => (b.total / b.wanted < a.total / a.wanted ? b : a));
	const left = showLength(snap(worst.total), ruler);
	const wanted = showLength(snap(worst.wanted), ruler);
	return [
		{
			path,
			kind: 'check',
			what: `${where} only ${left} of cloth can be turned under; ${wanted} is asked for.`,
			fix: `Make it wider, take a smaller turn-under there, or leave its edge bare.`,
		},
	];
}

function unrelieved(blocked: number, path: Path): Problem[] {
	if (blocked === 0) return [];
	return [
		{
			path,
			kind: 'check',
			what: `At ${blocked} ${blocked === 1 ? 'place' : 'places'} on the edge there is no room for the relief cut the cloth needs.`,
			fix: 'Make the turn-under there wider than the cloth is thick, or widen the corner.',
		},
	];
}
