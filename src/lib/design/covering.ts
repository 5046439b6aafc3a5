import type { Outline } from '../geometry';
import type { Length } from '../measure';

/*
 * What design hands to wrap: surfaces to be covered, with all that decides the size of the cloth.
 * Outlines are seen from the FRONT, x right, y up as the work stands in the vehicle, in one frame
 * per covering.
 */

/** How the cloth ends at one edge of an outline. */
export interface ClothEdge {
	readonly kind: 'wrapped' | 'bare' | 'tucked';
	/** Height of the edge the cloth climbs down: board plus what is glued on to it there. */
	readonly build: Length;
	/**
	 * The knife groove the cloth is trimmed in, measured on the back from the edge; null without
	 * one.
	 */
	readonly groove: { readonly offset: Length; readonly depth: Length } | null;
	/** Cloth on the back when there is no groove. */
	readonly margin: Length;
	/** Extra to hold on to, trimmed away afterwards. */
	readonly grip: Length;
	/** Numbers the person knows it by; those of both edges beside it where it is a rounding. */
	readonly numbers?: readonly number[];
}

/**
 * A layer covered together with what lies beneath: the cloth climbs `height` at each of its edges
 * (up or down alike).
 */
export interface ClothStep {
	readonly outline: Outline;
	readonly height: Length;
	readonly raised: boolean;
	/** The layer it belongs to: its name, and its place in the panel's list. */
	readonly layer?: { readonly name: string; readonly index: number };
}

/** An opening through the covered board. */
export interface Window {
	readonly outline: Outline;
	readonly edge: ClothEdge;
	/** What it is called, and its place in the panel's list where it is one of its windows. */
	readonly name?: string;
	readonly index?: number;
}

/** One surface that one piece of cloth covers. */
export interface Covering {
	readonly id: string;
	readonly label: string;
	readonly name: string;
	readonly owner: string;
	readonly covers: string;
	readonly cloth: string;
	readonly outline: Outline; // of the board
	readonly edges: readonly ClothEdge[]; // one per corner of the outline: the edge that leaves it
	readonly steps: readonly ClothStep[];
	readonly windows: readonly Window[];
	/**
	 * Inside corners the cloth cannot stretch round are said, or get a patch of cloth each. Absent
	 * on boxes, where the cloth is turned on to faces with cloth of their own.
	 */
	readonly insideCorners?: 'said' | 'patched';
	/** Area of foam glued on beneath it, mm2; absent without foam. */
	readonly foam?: number;
	/**
	 * Where the nap points, degrees counter-clockwise from +x; -90 is down, the rule for upright
	 * panels.
	 */
	readonly nap: number;
	readonly anyWay: boolean;
	readonly count: number;
	readonly lot: string;
	/** Seam lines the person placed, from edge to edge in the same frame. */
	readonly seams: readonly (readonly [
		{ readonly x: number; readonly y: number },
		{ readonly x: number; readonly y: number },
	])[];
}

/** A face of a box as carpet meets it, flat, seen from outside. */
export interface SkinFace {
	readonly key: string; // 'front', 'top', 'left' ...
	readonly name: string;
	readonly outline: Outline;
	readonly holes: readonly Outline[];
}

/**
 * The outside of a box. `round`: the faces the profile sweeps, in order round it, each `across`
 * wide when the box is a prism.
 */
export interface BoxSkin {
	readonly owner: string;
	readonly name: string;
	readonly round: readonly SkinFace[];
	readonly ends: readonly SkinFace[];
	/**
	 * Width of the swept faces; null when the box leans in both directions and no band can run
	 * round it.
	 */
	readonly across: Length | null;
}
