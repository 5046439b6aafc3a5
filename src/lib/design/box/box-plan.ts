import type { Outline } from '../../geometry';
import type { Problem } from '../../job';
import type { Length } from '../../measure';
import type { BoxSkin } from '../covering';
import type { Need } from '../need';
import type { Part } from '../part';
import type { HolePattern } from './board';
import type { Frame, Solid } from './solid';

/** All that is worked out of one box. */
export interface BoxPlan {
	readonly id: string;
	readonly name: string;
	readonly parts: readonly Part[];
	readonly problems: readonly Problem[];
	readonly needs: readonly Need[];
	readonly skin: BoxSkin | null;
	readonly mass: number; // kg, finished without drivers
	/** Everything else that is shown and printed; absent when the form itself cannot be made. */
	readonly figures?: BoxFigures;
}

export interface Sizes3 {
	readonly width: Length;
	readonly height: Length;
	readonly depth: Length;
}

export interface BoxFigures {
	/** Side profile from the right end, front on the left; null for a tapered box. */
	readonly profile: {
		readonly outer: Outline;
		readonly inner: Outline;
		readonly keys: readonly string[];
	} | null;
	readonly outside: Sizes3;
	readonly inside: Sizes3;
	/**
	 * Walls that are not square: 'back' 21.8 degrees from upright, 'top' 19.3 from level, 'left'
	 * 9.5 from square to the width.
	 */
	readonly leans: readonly {
		readonly board: string;
		readonly angle: number;
		readonly from: 'upright' | 'level' | 'square';
	}[];
	readonly boards: readonly BoxBoard[];
	readonly seams: readonly BoxSeam[];
	readonly chambers: readonly Chamber[];
	readonly solved: Solved | null;
	readonly drivers: readonly DriverFigures[];
	readonly radiators: readonly RadiatorFigures[];
	readonly vents: readonly VentFigures[];
	/** Of every chamber whose drivers have their data. */
	readonly responses: readonly ResponseFigures[];
	readonly rods: readonly RodFigures[];
	/** Boards that stand inside, from the inside of the left end, the front and the bottom. */
	readonly placed: readonly PlaceFigures[];
	readonly fit: FitFigures;
	readonly assembly: readonly AssemblyStep[];
	/** Glued area of all seams, mm2, and fasteners, one box. */
	readonly glued: number;
	readonly screws: number;
	readonly brads: number;
	readonly bead: Length; // sealant along the inside seams
	/** kg of the boards and rods, and with drivers in. */
	readonly mass: number;
	readonly loadedMass: number;
	/** Centre of gravity, loaded; null where nothing weighs anything. */
	readonly gravity: FromDatum | null;
	readonly tieDowns: readonly TieDownFigures[];
	/** Persons to lift it: two from 23 kg on, the load constant of the lifting equation. */
	readonly persons: 1 | 2;
}

/** A board where it stands in the box, for the pictures and for whoever checks its edges. */
export interface BoxBoard {
	readonly key: string;
	readonly part: string; // id of its part
	readonly label: string;
	readonly name: string;
	readonly role: string;
	readonly solid: Solid;
	readonly frame: Frame;
	/**
	 * The face its part is listed and cut from: an end may be turned over to match the other one.
	 * Outlines here are seen from outside.
	 */
	readonly view?: 'inside';
	/**
	 * Seen from outside, from the lower left corner of the rectangle round both faces; grain is not
	 * turned here.
	 */
	readonly outside: Outline;
	readonly inside: Outline;
	readonly edges: readonly BoardEdge[];
	readonly holes: readonly BoardHole[];
	readonly rabbets: readonly Solid[];
	/** What stands on its faces, face by face; none where nothing does. */
	readonly placing: readonly Placing[];
	/** What is screwed to it. */
	readonly devices: readonly BoardDevice[];
	readonly thickness: Length;
	/** Long and short face in both directions of the drawing. */
	readonly long: { readonly across: Length; readonly up: Length };
	readonly short: { readonly across: Length; readonly up: Length };
	/** The shift of its part in the directions of the drawing. */
	readonly shift?: BoardShift;
	readonly grain: 'across' | 'up' | 'any';
	readonly mass: number;
	readonly notes: readonly string[];
}

/** A device on a board; outlines as the holes of that board, seen from outside. */
export interface BoardDevice {
	readonly name: string;
	readonly side: 'outside' | 'inside';
	readonly body: Outline;
	/** With the free space round it. */
	readonly space: Outline;
	readonly height: Length;
	/** The chamber it takes its volume from; null outside. */
	readonly chamber: number | null;
	readonly mass: number;
	readonly note: string;
}

/** Faces one beside the other, and how much longer than the longer the rectangle round both is. */
export interface BoardShift {
	readonly outside: { readonly across: Length; readonly up: Length };
	readonly inside: { readonly across: Length; readonly up: Length };
	readonly offset: { readonly across: Length; readonly up: Length };
}

/** What stands on a face of a board, seen with that face up: placing lines. */
export interface Placing {
	readonly face: 'inside' | 'outside';
	/** The face itself, from its own lower left corner as it is looked at. */
	readonly outline: Outline;
	readonly feet: readonly Foot[];
}

/** What another board covers of a face; its sides are the lines to be drawn. */
export interface Foot {
	readonly key: string;
	readonly label: string;
	readonly name: string;
	readonly outline: Outline;
}

/** An edge of a board, from corner k of its faces to the next. */
export interface BoardEdge {
	readonly letter: string;
	/** Saw tilt from square, degrees; 0 for a square edge. */
	readonly tilt: number;
	readonly long: 'outside' | 'inside';
}

export interface BoardHole {
	readonly of: string;
	readonly name: string;
	readonly outline: Outline; // in the same frame as the faces of the board
	readonly centre: { readonly x: number; readonly y: number };
	readonly size: readonly Length[]; // diameter, or across and up
	readonly recess: Length | null;
	/** Of a recess that is cut from the inside face. */
	readonly face?: 'inside';
	/** Of a bolt or a screw: how all of them stand round their middle. */
	readonly pattern?: HolePattern;
	/** Nearest distance from the hole to an edge of the outside face. */
	readonly edge: Length;
}

export interface BoxSeam {
	readonly letter: string;
	readonly between: readonly [string, string]; // names
	readonly kind: string;
	readonly length: Length;
	readonly area: number; // mm2 glued
	readonly screws: number;
	readonly brads: number;
	/** Distance between screws as they come out evenly. */
	readonly spacing: Length | null;
}

/** One deduction, or the gross or net figure. Litres. */
export interface VolumeLine {
	readonly what: string;
	readonly litres: number;
}

export interface Chamber {
	readonly number: number;
	readonly gross: number; // litres
	readonly deductions: readonly VolumeLine[];
	readonly net: number;
	/** By a vent or by passive radiators. */
	readonly vented: boolean;
	/** Litres the chamber acts like, stuffing counted; the same as net without. */
	readonly acting: number;
	readonly stuffing: string | null;
	readonly wanted: number | null;
	readonly sealed: SealedFigures | null;
	/**
	 * Hz, all vents or passive radiators together; null where it breathes through another chamber.
	 */
	readonly tuning: number | null;
	/** What joins it to other chambers, and what is not worked out for that; whole sentences. */
	readonly says: readonly string[];
}

export interface SealedFigures {
	readonly qtc: number;
	readonly fc: number;
	readonly f3: number;
	readonly peak: number;
	/** Volume for the wanted Qtc, litres, when one is wanted and can be had. */
	readonly wantedVolume: number | null;
}

export interface Solved {
	readonly dimension: 'width' | 'height' | 'depth';
	readonly exact: Length;
	/** To the mark of the ruler the plan goes by, and the volume that gives. */
	readonly rounded: Length;
	readonly wanted: number;
	readonly gives: number;
}

export interface DriverFigures {
	readonly name: string;
	readonly board: string;
	readonly chamber: number | null;
	/** Of one on a divider: the chamber its cone looks into. */
	readonly front: number | null;
	/** Least distance from the cut-out to an edge of its board. */
	readonly edge: Length;
	/**
	 * Room along the axis and at the rim of the magnet, from the seat of the flange; null when
	 * nothing faces it.
	 */
	readonly room: Length;
	readonly roomAtRim: Length;
	readonly depth: Length;
	/** Air behind: room at the rim less mounting depth. */
	readonly behind: Length;
	readonly meets: readonly string[];
}

/** A passive radiator; figures in Hz and g are null where its data do not say them. */
export interface RadiatorFigures extends DriverFigures {
	/** Its cone in free air, Hz: as it comes, and with the added mass. Nothing sounds there. */
	readonly own: number | null;
	readonly loaded: number | null;
	/** Mass to be fixed to its cone, g. */
	readonly added: number | null;
	/** All of its chamber on its suspension and the air, Hz. */
	readonly tuning: number | null;
}

export interface VentFigures {
	readonly name: string;
	readonly kind: 'round' | 'slot';
	readonly chamber: number;
	/** Of a tube through a divider: the chamber at its other end. */
	readonly joins: number | null;
	readonly count: number;
	/** Diameter, or slot height and width. */
	readonly size: readonly Length[];
	readonly area: number; // cm2, all together
	readonly length: Length;
	/** With the end correction. */
	readonly acting: Length;
	readonly correction: { readonly name: string; readonly radii: number };
	/**
	 * Hz, with the vents that share the chamber; null where it breathes through another chamber.
	 */
	readonly tuning: number | null;
	readonly bent: boolean;
	/** Of a slot: its legs along the middle, corner to corner, the first from the outer face. */
	readonly legs: readonly Length[];
	readonly clear: Length;
	readonly clearWanted: Length;
	readonly speed: number | null; // m/s, peak
	readonly speedWord: string | null;
	/** Small's least area for what the drivers move, cm2. */
	readonly leastArea: number | null;
	readonly notes: readonly string[];
}

/** What a chamber with drivers sounds like: small signals, worked out from the data sheet. */
export interface ResponseFigures {
	readonly chamber: number;
	readonly kind: 'sealed' | 'vented' | 'passive';
	readonly drivers: number;
	/** W into all drivers of the chamber together. */
	readonly power: number;
	/** Where the power comes from. */
	readonly powerBy: 'asked' | 'rated' | 'usual';
	/** QL that was taken; null for a sealed chamber. */
	readonly losses: number | null;
	/** Half power: the lowest frequency from which on the level stays over -3 dB, Hz. */
	readonly f3: number;
	/** dB of the pass band at 1 m, in half space, at the power; null where Qes is not known. */
	readonly passband: number | null;
	/** One way, mm. */
	readonly xmax: number | null;
	/** Of a passive radiator, one way, mm. */
	readonly passiveXmax: number | null;
	/** Close together, for the drawing. */
	readonly points: readonly ResponsePoint[];
	/** At the preferred frequencies, for the table. */
	readonly thirds: readonly ResponsePoint[];
	/** What the curve means and leaves out, and what has to be looked at; whole sentences. */
	readonly says: readonly string[];
}

/** One frequency of the curves. */
export interface ResponsePoint {
	readonly hertz: number;
	/** dB over the pass band. */
	readonly level: number;
	/** Cone, one way, mm; null where the data for it are missing. */
	readonly cone: number | null;
	/** Fastest air in a vent, peak, m/s. */
	readonly air: number | null;
	/** Passive radiators, one way, mm. */
	readonly passive: number | null;
}

/**
 * A place in the box, from the left, the front and the bottom of its outside, as it stands in the
 * drawings.
 */
export interface FromDatum {
	readonly across: Length;
	readonly back: Length;
	readonly up: Length;
}

/** Where the box is held to the vehicle. What each point must bear is not worked out. */
export interface TieDownFigures {
	readonly name: string;
	readonly board: string;
	readonly place: FromDatum;
	/** Diameter of its hole. */
	readonly hole: Length | null;
}

export interface RodFigures {
	readonly name: string;
	readonly diameter: Length;
	readonly length: Length;
	readonly mass: number; // kg
	/** Its axis from end to end, from the same datum as boards inside. */
	readonly place: PlaceSpans;
}

/** From where to where something reaches along one direction of the box. */
export type FromTo = readonly [from: Length, to: Length];

/**
 * A place inside a box. The datum is the inside of the left end, of the front and of the bottom,
 * each where it reaches farthest out.
 */
export interface PlaceSpans {
	readonly fromLeft: FromTo;
	readonly fromFront: FromTo;
	readonly fromBottom: FromTo;
}

export interface PlaceFigures extends PlaceSpans {
	readonly key: string;
	readonly label: string;
	readonly name: string;
}

export interface FitFigures {
	/** Outside with cloth on it. */
	readonly wrapped: Sizes3;
	readonly cloth: Length;
	readonly inSpace: readonly string[];
	readonly fits: boolean | null;
	readonly passes: boolean | null;
	/** How to hold it to get it through the opening, or why it does not go. */
	readonly turn: string | null;
}

export interface AssemblyStep {
	readonly text: string;
	readonly seams: readonly string[];
	readonly glued: number; // mm2
	readonly screws: number;
	/** Between the screws of its widest set seam, about; 0 where there are none. */
	readonly apart: Length;
}
