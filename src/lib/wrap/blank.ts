import type { Outline, Point } from '../geometry';
import type { Length } from '../measure';

/**
 * A cut or a line marked on the back of a blank. 'fold' lies over the front edge of the board,
 * 'trim' over the knife groove; 'step' is where the cloth bends over the edge of a layer, 'bend'
 * where a corner patch bends over the back edge of the board.
 */
export interface BlankMark {
	readonly kind:
		'fold' | 'slit' | 'notch' | 'window' | 'seam' | 'centre' | 'hole' | 'trim' | 'step' | 'bend';
	readonly line: readonly Point[];
	readonly closed: boolean;
	/** A notch at an outside corner, mitred, rather than one of a row along a curve. */
	readonly corner?: true;
}

/** A verdict that is to be looked at. */
export interface Doubt {
	readonly figures: string;
	readonly help: string;
	/** Where in the panel it could be put right. */
	readonly at: readonly (string | number)[];
	/** 'note' where the relief cuts deal with it and leave little to be seen. */
	readonly kind: 'check' | 'note';
}

/** Whether the cloth takes a corner or an edge, with the figures behind it. */
export interface Verdict {
	/** In words: 'Step 1, corner 3'. */
	readonly where: string;
	/** What the place asks of the cloth and what the cloth gives, per cent. */
	readonly asks: number;
	readonly gives: number;
	readonly takes: boolean;
	/** In a sentence, with what would help when it does not. */
	readonly text: string;
	/** What a place that the cloth does not take comes to, and what would help. */
	readonly doubt?: Doubt;
}

/** The tape laid across a panel: its face, the steps climbed, and the turn-under at both ends. */
export interface Girth {
	readonly face: Length;
	readonly climbs: Length;
	readonly ends: readonly [Length, Length];
	readonly total: Length;
}

/**
 * A piece of cloth with its marks. Everything is drawn as the BACK of the cloth is seen, because
 * that is where it is marked and cut. x runs along the roll; the nap points along +x. The outline's
 * corner lies at 0,0.
 */
export interface Blank {
	readonly id: string;
	readonly label: string;
	readonly name: string;
	/** Panel or box it belongs to, by id. */
	readonly owner: string;
	/** Which face, layer or part it covers, in words. */
	readonly covers: string;
	readonly cloth: string;
	readonly count: number;
	readonly length: Length; // along the roll
	readonly width: Length;
	readonly outline: Outline;
	readonly marks: readonly BlankMark[];
	/** Turned in a way the nap forbids only where the person allows it. */
	readonly anyWay: boolean;
	/** Blanks of one group come off one roll, so that their colour matches. */
	readonly lot: string;
	/**
	 * A part of a seamed cloth: where its corner lies on the whole of it, so that a pattern goes on
	 * across the seam.
	 */
	readonly partAt?: { readonly x: Length; readonly y: Length };
	/** Area of board or cloth it is glued to, one face, mm2. */
	readonly bonded: number;
	/** Of one as it is cut, windows not yet cut out; absent until it is weighed. kg */
	readonly mass?: number;
	/** Area of foam glued to the board beneath it, one face, mm2; absent without foam. */
	readonly foam?: number;
	readonly reliefs: { readonly notches: number; readonly slits: number; readonly corners: number };
	readonly notes: readonly string[];
	readonly verdicts?: readonly Verdict[];
	/** Along the roll and across it; of the whole cloth where it is seamed together from parts. */
	readonly girth?: { readonly along: Girth; readonly across: Girth };
}
