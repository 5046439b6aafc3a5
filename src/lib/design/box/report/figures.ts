import { nth, TICKS_PER_MM, snap } from '../../../measure';
import { snapOutline } from '../../../geometry';
import type { Box, Sundry } from '../../../job';
import type { Part } from '../../part';
import { boxAssembly, evenSpacing, mountedSteps } from './assembly';
import { sayJoined } from '../between';
import { boardName, type Board, bradsOf, screwsOf, type Seam } from '../board';
import type { BoxFigures, BoxSeam, Chamber, FitFigures, RodFigures, Solved } from '../box-plan';
import { rodMass, type Rod, type Inside } from '../inside';
import { boardFigures } from './figures-board';
import { driverFigures, radiatorFigures } from './figures-driver';
import { ventFigures } from './figures-vent';
import { outsidePoints, sizesOf } from './fit';
import { checkMounted } from '../devices';
import { gravityOf, tieDownFigures } from './gravity';
import { sayNames } from './names';
import { sayBehindTerminal, sayOverlaps } from './openings';
import { responsesOf } from '../response';
import { personsFor } from './lifting';
import { placingOf } from './placing';
import { datumOf, standsAt, placesOf } from './positions';
import type { SweptSection } from '../shell';
import type { ProblemLog } from '../../problem-log';
import { angleBetween, p3, type Point3 } from '../solid';

const squareMm = (area: number): number => area / TICKS_PER_MM ** 2;

export interface Whole {
	readonly box: Box;
	readonly inside: Inside;
	readonly seams: readonly Seam[];
	readonly parts: readonly Part[];
	readonly section: SweptSection | null;
	/** Corners of the air of a tapered box; none for any other. */
	readonly innerCorners: readonly Point3[];
	readonly chambers: readonly Chamber[];
	readonly fit: FitFigures;
	readonly solved: Solved | null;
	readonly log: ProblemLog;
	readonly sundries: readonly Sundry[];
}

/** Everything of a box that is shown and printed, in whole lengths. */
export function figuresOf(whole: Whole): BoxFigures {
	const { box, inside, seams, parts, section, log } = whole;
	const { boards } = inside;
	const labels = new Map(boards.map((b, i) => [b.key, nth(parts, i).label]));
	const names = new Map(boards.map((b) => [b.key, b.name]));
	const datum = datumOf(section, whole.innerCorners);
	const rods = inside.rods.map((r) => rodFigures(r, datum, whole.sundries));
	const mass = [...parts, ...rods].reduce((sum, p) => sum + p.mass, 0);
	sayOverlaps(inside, log);
	sayBehindTerminal(box, inside, log);
	sayNames(box, inside, log);
	sayJoined(inside, log);
	const drivers = inside.seated.map((s) => driverFigures(s, inside, log));
	const radiators = inside.radiators.map((s) => radiatorFigures(s, inside, whole.chambers, log));
	const mounted = [
		...inside.seated.map((one) => ({ one, mass: one.driver.mass })),
		...inside.radiators.map((one, i) => ({
			one,
			mass: one.driver.mass + (nth(radiators, i).added ?? 0) / 1000,
		})),
	];
	const loads = [...mounted, ...inside.devices.map((d) => ({ mass: d.device.mass }))];
	const loadedMass = loads.reduce((sum, one) => sum + one.mass, mass);
	checkMounted(
		inside.devices,
		{ ...inside, measured: box.space !== null || box.opening !== null },
		log,
	);
	return {
		profile: section && {
			outer: snapOutline(section.outer),
			inner: snapOutline(section.inner),
			keys: section.keys,
		},
		outside: sizesOf(outsidePoints(boards)),
		inside: insideSizes(section, whole.innerCorners),
		leans: leansOf(boards),
		boards: boards.map((b, i) =>
			boardFigures(b, nth(parts, i), placingOf(boards, parts, i), inside.devices),
		),
		seams: seams.map((s) => seamFigures(s, names, box)),
		chambers: whole.chambers,
		solved: whole.solved,
		drivers,
		radiators,
		vents: inside.vents.map((v) => ventFigures(v, inside, log)),
		responses: responsesOf(box, inside, whole.chambers, log),
		rods,
		placed: placesOf(boards, parts, datum),
		fit: whole.fit,
		assembly: boxAssembly(
			box,
			boards,
			seams,
			labels,
			mountedSteps([...drivers, ...radiators], inside.devices),
		),
		glued: squareMm(seams.reduce((sum, s) => sum + s.area, 0)),
		screws: seams.reduce((sum, s) => sum + screwsOf(s, box), 0),
		brads: seams.reduce((sum, s) => sum + bradsOf(s, box), 0),
		bead: snap(seams.reduce((sum, s) => sum + (s.seals ? s.length : 0), 0)),
		mass,
		loadedMass,
		gravity: gravityOf(inside, mounted, whole.sundries),
		tieDowns: inside.tied.map((t) => tieDownFigures(t, boards)),
		persons: personsFor(loadedMass),
	};
}

function insideSizes(
	section: SweptSection | null,
	corners: readonly Point3[],
): BoxFigures['inside'] {
	if (!section) return sizesOf(corners);
	return sizesOf(
		section.inner.flatMap((p) => [section.x0, section.x1].map((x) => p3(x, p.x, p.y))),
	);
}

function rodFigures(rod: Rod, datum: Point3, sundries: readonly Sundry[]): RodFigures {
	return {
		name: rod.name,
		diameter: snap(rod.diameter),
		length: snap(Math.ceil(rod.length - 1e-3)),
		mass: rodMass(rod, sundries),
		place: standsAt([rod.from, rod.to], datum),
	};
}

/** Walls that are neither level nor upright: how far they are tilted from whichever is nearer. */
function leansOf(boards: readonly Board[]): BoxFigures['leans'] {
	return boards.flatMap((b) => {
		if (b.role !== 'wall' && b.role !== 'end') return [];
		const fromUpright = Math.abs(90 - angleBetween(b.frame.n, p3(0, 0, 1)));
		const sideways = Math.abs(90 - angleBetween(b.frame.n, p3(1, 0, 0)));
		// An end of a tapered box stands upright but not square to the width.
		if (b.role === 'end') return tilted(b, 90 - sideways, 'square');
		return fromUpright <= 45
			? tilted(b, fromUpright, 'upright')
			: tilted(b, 90 - fromUpright, 'level');
	});
}

function tilted(b: Board, angle: number, from: 'upright' | 'level' | 'square') {
	return angle < 0.01 ? [] : [{ board: b.key, angle, from }];
}

function seamFigures(seam: Seam, names: ReadonlyMap<string, string>, box: Box): BoxSeam {
	const screws = screwsOf(seam, box);
	const name = (key: string): string => names.get(key) ?? boardName(key);
	return {
		letter: seam.letter,
		between: [name(seam.between[0]), name(seam.between[1])],
		kind: seam.kind,
		length: snap(seam.length),
		area: squareMm(seam.area),
		screws,
		brads: bradsOf(seam, box),
		spacing: screws > 1 ? snap(evenSpacing(seam.length, box.fasteners.screwSpacing)) : null,
	};
}
