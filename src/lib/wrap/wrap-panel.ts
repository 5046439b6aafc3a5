import type { Covering, Need } from '../design';
import { napOnRoll, type Path, type Problem, type Cloth } from '../job';
import { type Length, ticks } from '../measure';
import { foamGlueNeed, glueNeed } from './adhesive';
import type { Blank } from './blank';
import { crowded } from './crowded';
import { cornerPatches, coveringBlank, doubtsOf, lotOf, patchNote } from './marks';
import { fitToRoll } from './fit-to-roll';
import type { WrapShop } from './shop';

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
	const patches = cornerPatches({ covering, shape }, blank, cloth, shop.overlap, shop.ruler);
	const fitted = fitToRoll(
		patches.length > 0 ? withPatches(blank, patches) : blank,
		{ ...shop, nap: napOnRoll(cloth), column: cloth.repeatAcross, seams },
		path,
	);
	const problems = [
		...doubtsOf(covering.name, blank.verdicts ?? [], path),
		...crowded(covering, shape, shop.ruler, path),
		...unrelieved(blocked, path),
		...fitted.problems,
	];
	const blanks = [...fitted.blanks, ...(fitted.blanks.length > 0 ? patches : [])];
	const needs = [...foamGlueNeed(blanks, covering.name), glueNeed(blanks, covering.name)];
	const seamLength = ticks(fitted.seamLength * covering.count);
	return { blanks, problems, needs, seamLength };
}

function withPatches(blank: Blank, patches: readonly Blank[]): Blank {
	return { ...blank, lot: lotOf(blank), notes: [...blank.notes, patchNote(patches)] };
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
