import { type BoxPlan, personsFor } from '../design';
import type { Job } from '../job';
import { massIn, roundMass, type Ruler } from '../measure';
import { clothMass, type Blank } from '../wrap';
import type { Caution } from './caution';
import type { Dangers } from './dangers';
import {
	COMMON,
	CRASH_SOURCE,
	FIRE_SOURCE,
	HEARING_SOURCE,
	LIFT_SOURCE,
	SPRAY_SOURCE,
} from './rules';

/** Cautions of glue, cloth, weight and the vehicle. */
export function workCautions(job: Job, of: Omit<Dangers, 'parts' | 'boards'>): Caution[] {
	const { boxes, panels, blanks, needs, runs } = of;
	const work = boxes.length + panels.length > 0;
	const { ruler } = job.shop;
	const weights = boxes.map((box) => weightOf(job, box, blanks));
	return [
		...(needs.some((n) => n.kind === 'contact-adhesive') ? [solvent()] : []),
		...(blanks.length > 0 ? [knife(), fire(job, blanks)] : []),
		...weights.filter((w) => personsFor(w.mass) > 1).map((w) => heavyBox(w, ruler)),
		...weights.map((w) => restraint(w, ruler)),
		...hearing(boxes),
		...(work ? [vehicle()] : []),
		...(work || runs.length > 0 ? [wiring()] : []),
		...(runs.length > 0 ? [lengthsOnly()] : []),
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

/** A box with what it weighs, kg. */
interface Weight {
	readonly box: BoxPlan;
	readonly mass: number;
	readonly cloth: boolean;
}

/** A box is lifted and crashes with its drivers in it and its cloth on. */
function weightOf(job: Job, box: BoxPlan, blanks: readonly Blank[]): Weight {
	const count = job.boxes.find((b) => b.id === box.id)?.count ?? 1;
	const cloth = clothMass(blanks, box.id) / count;
	return { box, mass: (box.figures?.loadedMass ?? box.mass) + cloth, cloth: cloth > 0 };
}

function heavyBox({ box, mass, cloth }: Weight, ruler: Ruler): Caution {
	return {
		id: `heavy-box-${box.id}`,
		title: 'Heavy box.',
		text: `${box.name} weighs about ${roundMass(mass, ruler)} with its drivers${cloth ? ' and cloth' : ''}. Two people to lift it.`,
		source: LIFT_SOURCE,
		where: ['summary', 'box'],
		about: [`box:${box.id}`],
	};
}

const STOP_G = 20;
const STANDARD_GRAVITY = 9.80665; // m/s2

/**
 * What a box of this mass pulls with when the vehicle stops at 20 g: screws into carpet do not hold
 * that.
 */
function restraint({ box, mass }: Weight, ruler: Ruler): Caution {
	const pull =
		ruler.unit === 'in'
			? `${Math.round(massIn(mass, 'lb') * STOP_G)} lbf`
			: `${((mass * STOP_G * STANDARD_GRAVITY) / 1000).toFixed(1).replace('.', ruler.decimal)} kN`;
	return {
		id: `restraint-${box.id}`,
		title: 'Crash load.',
		text: `In a ${STOP_G} g stop ${box.name} and its drivers pull with about ${pull}. Bolt or strap it to the body structure; screws into a carpeted floor are no restraint. This sheet is no structural approval.`,
		source: CRASH_SOURCE,
		where: ['summary', 'box'],
		about: [`box:${box.id}`],
	};
}

/** Boxes that something sounds in. */
function hearing(boxes: readonly BoxPlan[]): Caution[] {
	const loud = boxes.filter((b) => (b.figures?.drivers.length ?? 0) > 0);
	if (loud.length === 0) return [];
	return [
		{
			id: 'hearing',
			title: 'Hearing.',
			text: 'A cabin makes bass louder than any level on these pages, and what is loud for long harms the ears for good: over 85 dB(A) the hours count. Tune it with ear plugs in, and keep traffic and sirens to be heard.',
			source: HEARING_SOURCE,
			where: ['summary', 'box'],
			about: loud.map((b) => `box:${b.id}`),
		},
	];
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
		where: ['summary', 'panel', 'runs'],
		about: [],
	};
}

function lengthsOnly(): Caution {
	return {
		id: 'lengths-only',
		title: 'Lengths only.',
		text: 'No cable, fuse or hose is sized here and no joint is planned: a licensed person says what is used, how it is fused, and where it may run. Keep runs off sharp edges, moving parts and heat; measure again in the vehicle before cutting.',
		source: COMMON,
		where: ['summary', 'runs', 'order'],
		about: [],
	};
}
