import { type BoxPlan, type PanelDetail, type PanelPlan, personsFor } from '../../design';
import { type Ruler, showMass } from '../../measure';
import type { Plan } from '../../plan';
import { boxMass, boxMassText, panelMass, panelMassText } from '../wording';

/** One thing that comes out of the vehicle, or off what stays in it. */
export interface ComesOff {
	/** The letter it has in the picture; '' for the thing itself. */
	readonly letter: string;
	readonly what: string;
	readonly how: string;
	/** What holds it and how many: '6 screws'. */
	readonly held: string;
	/** '' where it is a part of what is weighed above. */
	readonly mass: string;
	readonly persons: number;
}

const several = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

export function boxComesOff(plan: Plan, box: BoxPlan, ruler: Ruler): ComesOff {
	const points = box.figures?.tieDowns.length ?? 0;
	return {
		...{ letter: '', what: box.name, how: 'comes out whole, once it is let go' },
		held:
			points === 0 ? 'as the fitter held it: not in this plan' : several(points, 'tie-down point'),
		mass: boxMassText(plan, box, ruler),
		persons: personsFor(boxMass(plan, box)),
	};
}

/** The panel itself, then its covers and the folds that open, by their letters. */
export function panelComesOff(plan: Plan, panel: PanelPlan, ruler: Ruler): ComesOff[] {
	const d = panel.detail;
	if (!d) return [];
	const devices = d.devices.reduce((sum, device) => sum + device.mass, 0);
	const loaded = panelMass(plan, panel) + devices;
	const whole: ComesOff = {
		...{ letter: '', what: panel.name, how: wayOff(d) },
		held: d.fixings === null ? 'nothing in this plan' : several(d.fixings.at.length, fixingOf(d)),
		mass:
			devices > 0
				? `${showMass(loaded, ruler)} with its devices`
				: panelMassText(plan, panel, ruler),
		persons: personsFor(loaded),
	};
	const rest = { mass: '', persons: 1 };
	const covers = d.covers.map((c, i): ComesOff => ({
		...{ ...rest, letter: letterOf(i), what: c.name },
		...(c.magnets.length > 0
			? { how: 'pull it off, no tool', held: several(c.magnets.length, 'magnet') }
			: { how: 'lift it by its finger hole, no tool', held: 'nothing: it lies on its ledge' }),
	}));
	const folds = d.hinges.map((_, i): ComesOff => ({
		...{ ...rest, letter: letterOf(d.covers.length + i), what: 'Fold' },
		...{ how: 'opens on its cloth', held: 'its own cloth: never cut there' },
	}));
	return [whole, ...covers, ...folds];
}

/** A, B, C …; past Z by their number. */
export const letterOf = (i: number): string =>
	i < 26 ? String.fromCharCode(65 + i) : String(i + 1);

const fixingOf = (d: PanelDetail): string => (d.fixings?.kind === 'clips' ? 'clip' : 'screw');

function wayOff(d: PanelDetail): string {
	if (d.fixings === null) return 'lifts out';
	return d.fixings.kind === 'clips'
		? 'pull it off by its edge, a clip at a time'
		: 'undo the screws, then lift it out';
}
