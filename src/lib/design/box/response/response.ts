import type { Box, Radiator } from '../../../job';
import { TICKS_PER_MM } from '../../../measure';
import type { ProblemLog } from '../../problem-log';
import type { Chamber, ResponseFigures, ResponsePoint } from '../box-plan';
import { isJoined } from '../between';
import type { Inside } from '../inside';
import type { Seated } from '../mounted';
import type { VentResult } from '../vent';
import { type Behind, type Breather, motion, type Motor, ventBreather } from './circuit';
import { bandOf, decibels, frequencies, halfPowerOf, preferred } from './curve';
import { contradictions, type DriverData, otherQts, qsOf } from './data';
import { type TunedCones, tunedTogether } from './radiator';
import { efficiency, motorOf, soundLevel, steadyPush } from './motor';
import { says } from './says';
import { sayPast } from './warnings';

/** The response of every chamber whose drivers are alike and have their data. */
export function responsesOf(
	box: Box,
	inside: Inside,
	chambers: readonly Chamber[],
	log: ProblemLog,
): ResponseFigures[] {
	sayContradictions(box, log);
	return chambers.flatMap((chamber) => {
		const room = chamber.number - 1;
		if (isJoined(inside, room)) return [];
		const own = inside.seated.filter((s) => s.room === room);
		const vents = inside.vents.filter((v) => v.setup.room === room);
		const cones = inside.radiators.filter((s) => s.room === room);
		const found = responseOf({ box, chamber, own, vents, cones }, log);
		return found ?? [];
	});
}

function sayContradictions(box: Box, log: ProblemLog): void {
	box.drivers.forEach(({ data }, d) => {
		for (const { what, fix } of contradictions(data)) log.check(['drivers', d, 'data'], what, fix);
		const other = otherQts(data);
		if (other) log.note(['drivers', d, 'data', 'qts'], other.what, other.fix);
	});
}

/** A chamber with what sounds in it. */
interface Sounding {
	readonly box: Box;
	readonly chamber: Chamber;
	readonly own: readonly Seated[];
	readonly vents: readonly VentResult[];
	readonly cones: readonly Seated<Radiator>[];
}

function responseOf(sounding: Sounding, log: ProblemLog): ResponseFigures | null {
	const { box, chamber, own, vents, cones } = sounding;
	const first = own[0];
	if (!first || chamber.net <= 0 || sayUnlike(sounding, log)) return null;
	const { data } = first.driver;
	const motor = motorOf(data, own.length);
	const tuned = tunedTogether(cones, chamber.net * 1e-3);
	if (!motor || (cones.length > 0 && !tuned)) return null;
	const behind = behindOf(sounding, tuned);
	const { power, powerBy } = powerOf(box, data, own.length);
	const f3 = halfPowerOf(motor, behind);
	const { qes } = qsOf(data);
	const stroke = strokeOf(data, own.length, power);
	const at = (hertz: number): ResponsePoint =>
		pointAt(hertz, motor, behind, stroke, { narrow: narrowest(vents), passive: coneArea(tuned) });
	const band = bandOf(f3);
	const whole = {
		chamber: chamber.number,
		kind: tuned
			? ('passive' as const)
			: vents.length > 0
				? ('vented' as const)
				: ('sealed' as const),
		drivers: own.length,
		power,
		powerBy,
		losses: behind.losses?.q ?? null,
		f3,
		passband: qes === null ? null : soundLevel(power * efficiency(motor.fs, qes, motor.vas)),
		xmax: data.xmax ?? null,
		passiveXmax: cones[0]?.driver.data.xmax ?? null,
		points: frequencies(band).map(at),
		thirds: preferred(band).map(at),
	};
	sayPast(box, whole, { driver: first.index, vents, cones }, log);
	return { ...whole, says: says(whole, data, chamber, tuned) };
}

/** Data that differ in one chamber give no curve; a sealed chamber has said so of its Qtc. */
function sayUnlike({ chamber, own, vents, cones }: Sounding, log: ProblemLog): boolean {
	const seen = own.map(({ driver }) => JSON.stringify(driver.data));
	const other = own.find((_, i) => seen[i] !== seen[0]);
	if (!other) return false;
	const sealed = vents.length === 0 && cones.length === 0;
	const told = sealed && own.some((s) => differs(s, own[0]));
	if (!told && own.some(({ driver }) => motorOf(driver.data, 1)))
		log.check(
			['drivers', other.index, 'data'],
			`${own.map((s) => s.name).join(', ')} share chamber ${chamber.number} with different data: no response is worked out for them together.`,
			'Give them the same data if they are alike, or a divider between them.',
		);
	return true;
}

/** Do two differ in what a Qtc goes by? */
function differs(a: Seated, b?: Seated): boolean {
	const known = (s?: Seated) => s && [s.driver.data.fs, qsOf(s.driver.data).qts, s.driver.data.vas];
	return JSON.stringify(known(a)) !== JSON.stringify(known(b));
}

const USUAL_POWER = 100;

function powerOf(
	{ response }: Box,
	{ pe }: DriverData,
	count: number,
): Pick<ResponseFigures, 'power' | 'powerBy'> {
	if (response.power !== null) return { power: response.power, powerBy: 'asked' };
	if (pe !== undefined) return { power: pe * count, powerBy: 'rated' };
	return { power: USUAL_POWER, powerBy: 'usual' };
}

const M = TICKS_PER_MM * 1000;
/** Area over acting length of a row of vents, m. */
const conductance = ({ setup, length }: VentResult): number =>
	setup.breath.area / (length + setup.breath.ends) / M;

/**
 * Q of a suspension of which nothing is said: without any loss the notch has no bottom, and there
 * is no figure at it.
 */
const NEARLY_LOSSLESS = 1000;

function withSomeLoss({ breather, loaded }: TunedCones): Breather {
	const { inertia, spring } = breather;
	if (!spring || spring.resistance > 0) return breather;
	return {
		inertia,
		spring: { ...spring, resistance: (2 * Math.PI * loaded * inertia) / NEARLY_LOSSLESS },
	};
}

function behindOf({ box, chamber, vents }: Sounding, tuned: TunedCones | null): Behind {
	if (tuned)
		return {
			volume: chamber.net * 1e-3,
			breather: withSomeLoss(tuned),
			losses: { hertz: tuned.hertz, q: box.response.losses },
		};
	if (vents.length === 0) return { volume: chamber.acting * 1e-3, breather: null, losses: null };
	return {
		volume: chamber.net * 1e-3,
		breather: ventBreather(vents.reduce((sum, v) => sum + conductance(v), 0)),
		losses: { hertz: chamber.tuning ?? 0, q: box.response.losses },
	};
}

/**
 * Speed of the fastest air in the vents for each m3/s through all of them, 1/m2: they share it as
 * area over acting length, so it is fastest in the one that acts shortest. Null without vents.
 */
function narrowest(vents: readonly VentResult[]): number | null {
	if (vents.length === 0) return null;
	const all = vents.reduce((sum, v) => sum + conductance(v), 0);
	const shortest = Math.min(...vents.map((v) => (v.length + v.setup.breath.ends) / M));
	return 1 / (shortest * all);
}

/** Area of all radiators together, m2; null without any or without their cone area. */
const coneArea = (tuned: TunedCones | null): number | null =>
	tuned && tuned.cone.area && tuned.cone.area * tuned.count;

/** How a steady voltage would push the cones, m, and their area together, m2. */
interface Stroke {
	readonly steady: number;
	readonly area: number;
}

function strokeOf(data: DriverData, count: number, power: number): Stroke | null {
	const { qes } = qsOf(data);
	const { fs, vas, sd } = data;
	if (fs === undefined || vas === undefined || sd === undefined || qes === null) return null;
	const one = { fs, qes, vas: vas * 1e-3, sd: sd * 1e-4 };
	return { steady: steadyPush(one, power / count), area: one.sd * count };
}

function pointAt(
	hertz: number,
	motor: Motor,
	behind: Behind,
	stroke: Stroke | null,
	{ narrow, passive }: { readonly narrow: number | null; readonly passive: number | null },
): ResponsePoint {
	const { level, cone, breather } = motion(motor, behind, hertz);
	const far = stroke && stroke.steady * cone;
	// Volume that goes through vents or radiators, m3; in vents its speed is what is heard.
	const moved = stroke && stroke.steady * stroke.area * breather;
	return {
		hertz,
		level: decibels(level),
		cone: far === null ? null : far * 1000,
		air: moved === null || narrow === null ? null : 2 * Math.PI * hertz * moved * narrow,
		passive: moved === null || passive === null ? null : (moved / passive) * 1000,
	};
}
