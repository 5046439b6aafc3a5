import type { EdgeChoice, EdgeChoices } from '../../../job';
import type { Bench } from '../bench';

/** What is chosen for one edge: what it does not say itself is as every edge. */
export function choiceOf({ all, own }: EdgeChoices, n: number): EdgeChoice {
	const said = own.find((o) => o.edge === n);
	if (!said) return all;
	const { end = all.end, clearance = all.clearance, beside = all.beside, tuck = all.tuck } = said;
	const { neighbourCloth = all.neighbourCloth } = said;
	return { end, clearance, beside, tuck, neighbourCloth };
}

/**
 * Says which cloth on a neighbour is not heeded: it counts only beside another panel on the same
 * line and beside what is still to be wrapped.
 */
export function sayIdleCloths({ panel: { edges }, log }: Bench, sides: readonly number[]): void {
	const { all, own } = edges;
	const counts = (n: number): boolean => {
		const { beside, end } = choiceOf(edges, n);
		return beside !== 'fixed' && end !== 'tucked';
	};
	const named = own.filter((o) => o.neighbourCloth !== undefined).map((o) => o.edge);
	const heeded = sides.some((n) => !named.includes(n) && counts(n));
	if (all.neighbourCloth !== null && !heeded)
		log.note(
			['edges', 'all', 'neighbourCloth'],
			`No edge takes the cloth '${all.neighbourCloth}' on its neighbour off: ${WHEN}`,
			RIGHT,
		);
	own.forEach(({ edge, neighbourCloth = null }, i) => {
		if (neighbourCloth === null || counts(edge)) return;
		log.note(
			['edges', 'own', i, 'neighbourCloth'],
			`Edge ${edge} does not take the cloth '${neighbourCloth}' on its neighbour off: ${WHEN}`,
			RIGHT,
		);
	});
}

const WHEN =
	'what is measured to as it stands has its cloth on already, and a tucked edge slips behind it.';
const RIGHT =
	'Measure to another panel or to something still to be wrapped, or name no cloth on the neighbour.';
