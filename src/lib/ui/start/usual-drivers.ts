/*
 * Usual figures of drivers by their nominal diameter, for a box to begin with before the driver
 * lies on the bench. Common practice, no source: makers differ, so measure yours.
 */

/** Lengths in mm, volume in litres, mass in kg. */
export interface UsualDriver {
	readonly nominal: string;
	readonly cutout: number;
	readonly frame: number;
	readonly depth: number;
	readonly displacement: number;
	readonly mass: number;
	/** A volume to begin with, sealed. */
	readonly litres: number;
}

export const USUAL_DRIVERS: readonly UsualDriver[] = [
	{
		nominal: '165 mm (6½ in)',
		cutout: 145,
		frame: 168,
		depth: 70,
		displacement: 0.6,
		mass: 2,
		litres: 9,
	},
	{
		nominal: '200 mm (8 in)',
		cutout: 182,
		frame: 208,
		depth: 95,
		displacement: 1,
		mass: 3.2,
		litres: 16,
	},
	{
		nominal: '250 mm (10 in)',
		cutout: 232,
		frame: 262,
		depth: 125,
		displacement: 1.6,
		mass: 4.8,
		litres: 23,
	},
	{
		nominal: '300 mm (12 in)',
		cutout: 278,
		frame: 310,
		depth: 145,
		displacement: 2.3,
		mass: 6.5,
		litres: 32,
	},
	{
		nominal: '380 mm (15 in)',
		cutout: 353,
		frame: 388,
		depth: 170,
		displacement: 4,
		mass: 9.5,
		litres: 60,
	},
];
