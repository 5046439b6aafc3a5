/*
 * The published figures behind the cautions, each with its source. Where none is known the rule
 * says so. Cautions defer to the tool's manual, local codes and licensed practice; they are
 * reminders, not approvals.
 */

export const COMMON = 'Common practice, no source.';

/**
 * Load constant of the revised lifting equation (see design/box/lifting): the most one person
 * should lift.
 */
export const LIFT_SOURCE = 'Waters et al., NIOSH 94-110 (1994): load constant 23 kg (51 lb).';

/**
 * A saw part narrower or shorter than this is a small part: push stick, sled, or cut oversize and
 * trim.
 */
export const SMALL_WIDTH_MM = 152.4;
export const SMALL_LENGTH_MM = 304.8;
export const SMALL_SOURCE =
	"Owner's manual of a bench saw: push stick below 6 in wide or 12 in long.";

export const DUST_SOURCE =
	'IARC Monographs 62 (1995) and 100C (2012); NIOSH recommended limit 1 mg/m3; OSHA 29 CFR 1910.1000 Table Z-1.';
export const FORMALDEHYDE_SOURCE =
	'IARC Monographs 100F (2012, from memory); 40 CFR 770 limits for boards.';
export const SPREADER_SOURCE = '29 CFR 1910.213(c): spreader and guard on hand-fed ripsaws.';
export const SPRAY_SOURCE =
	"29 CFR 1910.107 for sprayed flammable adhesives; the tin's own data sheet comes first.";
export const FIRE_SOURCE =
	'49 CFR 571.302 S4.3: burn rate at most 102 mm/min for interior materials.';
export const CRASH_SOURCE = 'Force = mass x acceleration, at 20 g.';
export const HEARING_SOURCE =
	'NIOSH 98-126 (1998): 85 dB(A) over eight hours. From memory; traffic: common practice, no source.';
