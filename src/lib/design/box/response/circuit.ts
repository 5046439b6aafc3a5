import { SOUND } from '../vent';
import { type Complex, complex, productOf, quotient, sizeOf, sumOf } from './complex';

/*
 * A driver in its box as an acoustic circuit, one frequency at a time. R. H. Small, J. Audio Eng.
 * Soc. 20 (1972), 'Direct-Radiator Loudspeaker System Analysis' and 'Closed-Box Loudspeaker
 * Systems'; 21 (1973), 'Vented-Box Loudspeaker Systems' I to IV; the vented box after A. N. Thiele,
 * J. Audio Eng. Soc. 19 (1971). Small signals: nothing here knows how far a cone can go. SI units;
 * impedances are divided by the density of air and the square of the speed of sound, so that a
 * compliance is a volume.
 */

/** One driver, or several alike that act as one. */
export interface Motor {
	/** Free air resonance, Hz. */
	readonly fs: number;
	/** 1 / Qes, and 1 / Qms. Where only Qts is known all damping counts as electrical. */
	readonly damping: { readonly electrical: number; readonly mechanical: number };
	/** Of all together, m3. */
	readonly vas: number;
	/** Inductance of the coil over its resistance, s; 0 leaves it out. */
	readonly lag: number;
}

/** What a chamber breathes through: a plug of air, or a cone without a motor. */
export interface Breather {
	/** Inertia: 1 / (area over acting length x the speed of sound squared), s2/m3. */
	readonly inertia: number;
	/** Volume of air as stiff as its suspension, m3, and its own Q; null for a vent. */
	readonly spring: { readonly volume: number; readonly resistance: number } | null;
}

/** The air behind the driver. */
export interface Behind {
	/** m3. */
	readonly volume: number;
	/** Null for a sealed box. */
	readonly breather: Breather | null;
	/** Hz the chamber is tuned to, and Q of all its losses there, reckoned as leaks. */
	readonly losses: { readonly hertz: number; readonly q: number } | null;
}

/** What moves at one frequency. */
export interface Motion {
	/** Sound pressure far away over that of the pass band. */
	readonly level: number;
	/** How far the cone goes, over how far a steady current would push it in free air. */
	readonly cone: number;
	/** Volume that goes through the breather, in the same measure; 0 without one. */
	readonly breather: number;
}

/** A plug of air, by what all vents of a chamber together give: area over acting length, m. */
export const ventBreather = (conductance: number): Breather => ({
	inertia: 1 / (conductance * SOUND * SOUND),
	spring: null,
});

export function motion(motor: Motor, behind: Behind, hertz: number): Motion {
	const s = complex(0, 2 * Math.PI * hertz);
	const one = complex(1);
	const ws = 2 * Math.PI * motor.fs;
	const coil = sumOf(one, productOf(s, complex(motor.lag)));
	const damping = sumOf(
		quotient(complex(motor.damping.electrical), coil),
		complex(motor.damping.mechanical),
	);
	const p = productOf(s, complex(1 / ws));
	const suspended = quotient(
		sumOf(productOf(p, p), productOf(p, damping), one),
		productOf(s, complex(motor.vas)),
	);
	const air = productOf(s, complex(behind.volume));
	const through = behind.breather
		? quotient(one, breatherImpedance(behind.breather, s))
		: complex(0);
	const box = sumOf(air, through, complex(leakOf(behind)));
	// Through the pressure in the box, which stays finite where the cone stands still.
	const pressure = quotient(one, productOf(coil, sumOf(productOf(suspended, box), one)));
	const moved = (admittance: Complex): number =>
		sizeOf(quotient(productOf(pressure, admittance), s)) / motor.vas;
	return {
		// What sounds is what presses the air in the box: cone, vent and leaks together.
		level: sizeOf(productOf(s, pressure, air)) / (ws * ws * motor.vas),
		cone: moved(box),
		breather: moved(through),
	};
}

function breatherImpedance({ inertia, spring }: Breather, s: Complex): Complex {
	const mass = productOf(s, complex(inertia));
	if (!spring) return mass;
	return sumOf(mass, complex(spring.resistance), quotient(complex(1 / spring.volume), s));
}

/** What leaks, as a conductance: QL = 1 / (2 pi fb x leak over volume). */
function leakOf({ volume, losses }: Behind): number {
	return losses ? (2 * Math.PI * losses.hertz * volume) / losses.q : 0;
}
