import type { Outline, Point, Rect } from '../../geometry';
import type { EdgeChoice, Device, Zone, Layer } from '../../job';
import type { Length } from '../../measure';

/*
 * The figures of a panel, all in one frame: seen from the front, x right, y up, the frame its
 * opening was given in. Heights are counted from the back of the board, which is 0.
 */

/** What one edge of the opening comes to. */
export interface EdgeFigure {
	readonly edge: number;
	readonly end: EdgeChoice['end'];
	readonly length: Length;
	/** Pressed cloth on it. */
	readonly cloth: Length;
	/** Gap that will be seen. */
	readonly gap: Length;
	/**
	 * From the opening's line to the board, and to the finished edge; negative: beyond the line.
	 */
	readonly setIn: Length;
	readonly finishedIn: Length;
	/** From board to board where another panel meets it on the same line. */
	readonly boardGap: Length | null;
}

/** Opening, board and finished panel. */
export interface Fit {
	readonly opening: Outline;
	readonly board: Outline;
	readonly finished: Outline;
	readonly sizes: { readonly opening: Rect; readonly board: Rect; readonly finished: Rect };
	readonly edges: readonly EdgeFigure[];
	/** The number each edge of the OPENING is known by; null for a rounding. */
	readonly openingEdges: readonly (number | null)[];
	/** How each edge of the BOARD outline ends. */
	readonly boardEdges: readonly EdgeChoice['end'][];
	/** The number each edge of the BOARD is known by; of both its neighbours for a rounding. */
	readonly boardNumbers: readonly (readonly number[])[];
}

export interface WindowFigure {
	readonly id: string;
	readonly name: string;
	/**
	 * The clear opening asked for, the hole in the board, and what stays open once the cloth is
	 * turned in.
	 */
	readonly wanted: Outline;
	readonly hole: Outline;
	readonly finished: Outline;
	readonly wrapped: boolean;
	/** Boards glued up at its edge. */
	readonly build: Length;
}

/** One layer: a raised piece, or a recess with the floor behind it. */
export interface LayerFigure {
	readonly id: string;
	readonly name: string;
	readonly place: Layer['place'];
	readonly covering: Layer['covering'];
	readonly on: string | null;
	/**
	 * The cloth that covers it, pressed thickness, and whose cloth it is: a layer's id, or null for
	 * the panel's.
	 */
	readonly cloth: string | null;
	readonly pressed: Length;
	readonly surface: string | null;
	/**
	 * Board to be cut: the raised piece, or the floor of a recess; null where the board beneath is
	 * the floor.
	 */
	readonly piece: Outline | null;
	/** Hole or seat in what it belongs to; depth is that of a seat, or the whole thickness. */
	readonly hole: Outline | null;
	readonly depth: Length;
	/** What is seen once covered. */
	readonly finished: Outline;
	readonly material: string;
	readonly thickness: Length;
	readonly foam: Length;
	/** Lower and upper face of the piece. */
	readonly bottom: Length;
	readonly top: Length;
	/** Height of the step the eye sees: up for raised, down for recessed. */
	readonly step: Length;
}

export interface GrooveFigure {
	readonly width: Length;
	readonly depth: Length;
	readonly offset: Length;
	/** Centre lines, as seen from the front. */
	readonly runs: readonly (readonly Point[])[];
	readonly length: Length;
	/** What it stops at, in words. */
	readonly stops: readonly string[];
}

export interface FixingFigure {
	readonly kind: 'clips' | 'screws';
	readonly at: readonly Point[];
	readonly hole: Length;
	/** How deep the hole goes; null as deep as a clip reaches, and through for a screw. */
	readonly depth: Length | null;
	/** Distance from the edge, after it was moved clear of the groove. */
	readonly inset: Length;
	readonly widest: Length;
}

export interface CoverFigure {
	readonly id: string;
	readonly name: string;
	readonly cloth: string | null;
	readonly pressed: Length;
	/** Hole in the panel's board, the cover's board, the cover finished. */
	readonly hole: Outline;
	readonly board: Outline;
	readonly finished: Outline;
	readonly gap: Length;
	readonly boardGap: Length;
	readonly ledge: {
		readonly outer: Outline;
		readonly inner: Outline;
		readonly material: string;
		readonly thickness: Length;
	};
	readonly finger: Outline | null;
	readonly magnets: readonly Point[];
	/** Of each magnet; null without magnets. */
	readonly magnet: Length | null;
	/** Raised layers that run on over the cover: it carries a piece of each. */
	readonly layers: readonly LayerFigure[];
}

export interface HingeFigure {
	readonly id: string;
	readonly from: Point;
	readonly to: Point;
	readonly gap: Length;
}

export interface RingFigure {
	readonly id: string;
	readonly name: string;
	/** The hole it trims, the ring's board, and the ring finished: outer and inner line each. */
	readonly hole: Outline;
	readonly board: { readonly outer: Outline; readonly inner: Outline };
	readonly finished: { readonly outer: Outline; readonly inner: Outline };
	readonly thickness: Length;
	/** Depth and outline of the rebate it is let into; null when it lies on the wall. */
	readonly rebate: { readonly depth: Length; readonly outline: Outline } | null;
}

export interface DeviceFigure {
	readonly id: string;
	readonly name: string;
	readonly body: Outline;
	/** Body and the free space round it. */
	readonly space: Outline;
	readonly reach: readonly Outline[];
	readonly height: Length;
	readonly over: Length;
	readonly mass: number;
	readonly at: Device;
}

/** A hole of the drilling template, measured from the lower left of the board. */
export interface Drill {
	readonly n: number;
	readonly x: Length;
	readonly y: Length;
	readonly diameter: Length;
	readonly of: string;
}

export interface ZoneFigure {
	readonly id: string;
	readonly name: string;
	readonly kind: Zone['kind'];
	readonly outline: Outline;
}

/** All figures of one panel. */
export interface PanelDetail {
	/** 'L' or 'R' when it is one of a pair; 'L' for a pair drawn as the left one. */
	readonly hand: 'L' | 'R' | null;
	/** True when the mirror image is made as well. */
	readonly both: boolean;
	readonly label: string;
	readonly cloth: { readonly id: string; readonly pressed: Length; readonly nap: number } | null;
	readonly foam: Length;
	/** Corner patches are asked for. */
	readonly cornerPatches: boolean;
	readonly fit: Fit;
	readonly material: string;
	readonly thickness: Length;
	/** Parts the board is split into along its hinges; one, the board itself, without. */
	readonly leaves: readonly Outline[];
	readonly windows: readonly WindowFigure[];
	readonly layers: readonly LayerFigure[];
	readonly groove: GrooveFigure | null;
	readonly fixings: FixingFigure | null;
	readonly covers: readonly CoverFigure[];
	readonly hinges: readonly HingeFigure[];
	readonly rings: readonly RingFigure[];
	readonly devices: readonly DeviceFigure[];
	readonly drills: readonly Drill[];
	readonly zones: readonly ZoneFigure[];
	/** Seams in the cloth of the face, as the person placed them. */
	readonly seams: readonly (readonly [Point, Point])[];
	/** Steps of assembly in order, in words. */
	readonly assembly: readonly string[];
}
