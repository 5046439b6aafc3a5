import kept from '../../../shared/trust.json';

/*
 * How far to trust a plan: what is proven, what is estimated, what to measure before the first cut.
 * The figures stand in `shared/trust.json`, as the long form of the proofs left them.
 */

/** One of the proofs as it was last run. */
export interface TrustLine {
	readonly what: string;
	/** Year, month, day. */
	readonly date: string;
	readonly tried: number;
	readonly stood: number;
	/** What became of the others, and what was left out. */
	readonly said: readonly string[];
}

interface TrustChapter {
	readonly title: string;
	readonly text: string;
	readonly points: readonly string[];
}

export const trustLines: readonly TrustLine[] = kept.lines;

export const trustChapters: readonly TrustChapter[] = [
	{
		title: 'Proven',
		text: 'Checked by machine, for your job, each time it is planned. What fails is not printed.',
		points: [
			'Every layout is laid before an auditor that shares nothing with the search: each part there once and no more, inside its sheet, a saw cut apart from its neighbours, turned only as grain and nap allow.',
			'Every cut of a saw layout is made again on paper: it goes through a board that is really there, and what it gives adds up, the width of the cut among it.',
			'Lengths are whole steps of 1/1600 mm. Millimetres to the hundredth and inches to the 64th are exact; nothing is rounded on the way, and parts round outwards, stock inwards.',
			'Money is whole cents, rounded once, at the end.',
			'"No layout by saw needs fewer sheets" stands only where that is proven, by the rules given.',
			'The same job, seed and effort give the same plan, and the same files to the byte, on the screen and from the command line: compared in one browser and one version of Node, as told below.',
		],
	},
	{
		title: 'Estimated',
		text: 'Worked out from published formulas or trade figures. Good for choosing, not for promising.',
		points: [
			'Tuning of vents, level, excursion and vent air: from the data sheet of the driver, for small signals, without the vehicle around the box.',
			'What cloth can stretch, shrink and climb: from the figures of the rack. They differ from roll to roll.',
			'Masses and centres of gravity: from densities as typed in. Damp board is heavier.',
			'Adhesive, screws and other sundries: by area and spacing, with the spare you set.',
			'Cables, looms and hoses: by the lengths you measured. None is sized, and no fuse is.',
			'Labour: your rates times trade figures. Prices: as typed in on the rack.',
			'An outline traced over a photograph: its expected error is said beside it.',
		],
	},
	{
		title: 'Measure before cutting',
		text: 'No plan can know these. A minute with a tape saves a sheet.',
		points: [
			'The thickness of the very boards you cut, in three places: enter it as measured, not as sold.',
			'The width of the cut your blade makes: one trial cut, then the tape.',
			'Length, width and squareness of each sheet and offcut, and the usable width of the roll.',
			'The opening in the vehicle, at both ends and in the middle, corner to corner; twice, by two people if it matters.',
			'The driver, amplifier or device in your hand against its cut-out: makers change them.',
			'The scale bar on every full-size page, with a steel rule, before anything is marked out.',
			'What lies behind the panel before a hole is drilled: wires, pipes, fuel lines, airbags.',
		],
	},
	{
		title: 'Left to you',
		text: 'What holds a box in a vehicle is a matter of life. Local codes, the makers’ instructions and licensed practice come first; the cautions of a plan do not replace them.',
		points: [
			'Tie-downs are figures to start from, no approval of a fastening.',
			'Air vents of battery zones, fuses and wires follow the makers and the law of the place.',
		],
	},
];
