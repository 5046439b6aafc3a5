import type { BoxPlan } from '../design/box/box-plan';
import type { Need } from '../design/need';
import type { PanelPlan } from '../design/panel/panel-plan';
import type { Job } from '../job/job';
import type { Blank } from '../wrap/blank';
import type { Caution } from './caution';
import { COMMON, CRASH_SOURCE, FIRE_SOURCE, LIFT_KG, LIFT_SOURCE, SPRAY_SOURCE } from './rules';

/** Cautions of glue, cloth, weight and the vehicle. */
export function workCautions(
	job: Job,
	boxes: readonly BoxPlan[],
	panels: readonly PanelPlan[],
	blanks: readonly Blank[],
	needs: readonly Need[],
): Caution[] {
	const work = boxes.length + panels.length > 0;
	return [
		...(needs.some((n) => n.kind === 'contact-adhesive') ? [solvent()] : []),
		...(blanks.length > 0 ? [knife(), fire(job, blanks)] : []),
		...boxes.filter((b) => b.mass >= LIFT_KG).map(heavyBox),
		...boxes.map(restraint),
		...(work ? [vehicle(), wiring()] : []),
	];
}

function solvent(): Caution {
	return {
		id: 'solvent',
		title: 'Contact adhesive.',
		text: 'Solvent vapour burns and makes you dizzy: no flame, heater or spark near it, open doors and forced air, a respirator with organic-vapour cartridges, gloves. Let it flash off before the parts meet.',
		source: SPRAY_SOURCE,
		where: ['summary', 'cloth', 'order'],
		about: [],
	};
}

function knife(): Caution {
	return {
		id: 'knife',
		title: 'Knife.',
		text: 'A fresh blade cuts with less force. Cut away from the hand that holds the cloth; put used blades in a tin.',
		source: COMMON,
		where: ['cloth'],
		about: [],
	};
}

function fire(job: Job, blanks: readonly Blank[]): Caution {
	const names = job.stock.cloths
		.filter((c) => blanks.some((b) => b.cloth === c.id))
		.map((c) => c.name);
	return {
		id: 'interior-fire',
		title: 'Interior cloth.',
		text: `Ask for the burn-rate sheet of ${names.join(' and ')}: trim inside the cabin has to burn no faster than the law where the vehicle is registered allows.`,
		source: FIRE_SOURCE,
		where: ['summary', 'cloth'],
		about: [],
	};
}

function heavyBox(box: BoxPlan): Caution {
	return {
		id: `heavy-box-${box.id}`,
		title: 'Heavy box.',
		text: `${box.name} weighs about ${Math.round(box.mass)} kg before the drivers go in. Two people to lift it.`,
		source: LIFT_SOURCE,
		where: ['summary', 'box'],
		about: [`box:${box.id}`],
	};
}

const STANDARD_GRAVITY = 9.80665;

/** What a box of this mass pulls with when the vehicle stops at 20 g: screws into carpet do not hold that. */
function restraint(box: BoxPlan): Caution {
	const kilonewtons = (box.mass * 20 * STANDARD_GRAVITY) / 1000;
	return {
		id: `restraint-${box.id}`,
		title: 'Crash load.',
		text: `In a 20 g stop ${box.name} alone pulls with about ${kilonewtons.toFixed(1)} kN, the drivers not counted. Bolt or strap it to the body structure; screws into a carpeted floor are no restraint. This sheet is no structural approval.`,
		source: CRASH_SOURCE,
		where: ['summary', 'box'],
		about: [`box:${box.id}`],
	};
}

function vehicle(): Caution {
	return {
		id: 'vehicle',
		title: 'Keep clear.',
		text: 'Battery, spare wheel, jack, filler, tow eye, seat folds, child-seat anchors, belts, airbag sweeps, vents and drains stay clear and within reach. No hard edge where a head or knee can strike.',
		source: COMMON,
		where: ['summary', 'panel', 'box'],
		about: [],
	};
}

function wiring(): Caution {
	return {
		id: 'wiring',
		title: 'Wiring.',
		text: 'Fuses, cable sizes and any work near airbags belong to a licensed person. Nothing on these pages is an electrical approval.',
		source: COMMON,
		where: ['summary', 'panel'],
		about: [],
	};
}
