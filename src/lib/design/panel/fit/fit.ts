import type { Path, EdgeChoice, EdgeChoices } from '../../../job';
import {
	bounds,
	edgeLength,
	edgesOf,
	type Outline,
	setIn,
	type SetOutline,
} from '../../../geometry';
import { type Length, snap } from '../../../measure';
import { clothAsked, say, type Bench } from '../bench';
import type { Drawn } from '../../shape';
import type { EdgeFigure, Fit } from '../figures';
import { choiceOf, sayIdleCloths } from './edge-choice';
import { wrapRoundings } from './wrapped-roundings';

/*
 * The board is the opening set in by the pressed cloth and the clearance, edge by edge: opening
 * 300, cloth 3, clearance 0.5 on both sides gives 293. Common practice, no source.
 */

/** How far the board stands back from one edge of the opening, and what makes it up. Ticks. */
export interface SetBack {
	readonly end: EdgeChoice['end'];
	/** Pressed cloth on this edge. */
	readonly cloth: number;
	/** Gap that will be seen between the finished edge and its neighbour. */
	readonly gap: number;
	/**
	 * From the opening's line to the finished edge, and to the board. Negative: beyond the line.
	 */
	readonly finished: number;
	readonly board: number;
	/** From board to board, where the neighbour is another panel on the same line. */
	readonly boardGap: number | null;
}

/**
 * @param pressed cloth of the panel, pressed; 0 without one. @param neighbour cloth on the
 * neighbour, pressed.
 */
export function setBack(choice: EdgeChoice, pressed: number, neighbour: number): SetBack {
	if (choice.end === 'tucked') {
		const back = -choice.tuck;
		return { end: 'tucked', cloth: 0, gap: 0, finished: back, board: back, boardGap: null };
	}
	const cloth = choice.end === 'wrapped' ? pressed : 0;
	const gap = choice.clearance;
	const shared = choice.beside === 'panel';
	// On a shared line each of the two panels gives half the gap; beside something still bare, its
	// cloth comes off as well.
	const finished = shared ? gap / 2 : choice.beside === 'unwrapped' ? gap + neighbour : gap;
	const boardGap = shared ? cloth + gap + neighbour : null;
	return { end: choice.end, cloth, gap, finished, board: finished + cloth, boardGap };
}

/** What the person chose for each edge of a drawn outline; null for roundings, which follow. */
function choicesFor(drawn: Drawn, edges: EdgeChoices, wrapped: boolean): (EdgeChoice | null)[] {
	return drawn.sides.map((n) => {
		if (n === null) return null;
		const choice = choiceOf(edges, n);
		// A panel without cloth has no wrapped edge, whatever is ticked.
		return choice.end === 'wrapped' && !wrapped ? { ...choice, end: 'bare' } : choice;
	});
}

/**
 * Opening, board and finished outline of the panel. Null (and it is said why) when there is no
 * board left.
 */
export function fitPanel(bench: Bench, opening: Drawn): Fit | null {
	const { panel } = bench;
	checkEdgeNumbers(bench, opening);
	sayIdleCloths(
		bench,
		opening.sides.filter((n) => n !== null),
	);
	const pressed = clothAsked(bench, panel.cloth, ['cloth'])?.pressed ?? 0;
	const backs = choicesFor(opening, panel.edges, panel.cloth !== null).map((c) => {
		if (!c) return null;
		const path: Path = ['edges'];
		const neighbour = clothAsked(bench, c.neighbourCloth, path)?.pressed ?? 0;
		return setBack(c, pressed, neighbour);
	});
	const board = set(opening.outline, backs, (b) => b.board);
	const finished = set(opening.outline, backs, (b) => b.finished);
	if (!board.outline || !finished.outline) return nothingLeft(bench);
	reportLost(bench, opening, board);
	if (board.closed.length > 0) return closedNeck(bench, opening, board);
	const seen = wrapRoundings(
		board,
		finished,
		backs.map((b) => b && b.cloth),
	);
	return {
		opening: opening.outline,
		board: board.outline,
		finished: seen,
		sizes: {
			opening: bounds(opening.outline),
			board: bounds(board.outline),
			finished: bounds(seen),
		},
		edges: edgeFigures(opening, backs),
		openingEdges: opening.sides,
		boardEdges: board.from.map((k, i) => edgeEnd(backs, k ?? board.from[i - 1] ?? 0)),
		boardNumbers: board.from.map((k, i) => numbersAt(opening.sides, k ?? board.from[i - 1] ?? 0)),
	};
}

function set(
	outline: Outline,
	backs: readonly (SetBack | null)[],
	by: (b: SetBack) => number,
): SetOutline {
	return setIn(
		outline,
		backs.map((b) => b && by(b)),
	);
}

/** A rounding is wrapped when either of its neighbours is: the cloth has to go somewhere. */
function edgeEnd(backs: readonly (SetBack | null)[], k: number): EdgeChoice['end'] {
	const own = backs[k];
	if (own) return own.end;
	const n = backs.length;
	const step = (from: number, by: number): SetBack | null => {
		for (let i = 1; i < n; i++) {
			const b = backs[(from + by * i + n * n) % n];
			if (b) return b;
		}
		return null;
	};
	const ends = [step(k, -1)?.end, step(k, 1)?.end];
	return ends.includes('wrapped') ? 'wrapped' : ends.includes('bare') ? 'bare' : 'tucked';
}

/** The number of an edge, or of the nearest numbered ones on both sides of a rounding. */
function numbersAt(sides: readonly (number | null)[], k: number): number[] {
	const own = sides[k];
	if (own !== null && own !== undefined) return [own];
	const n = sides.length;
	const nearest = (by: number): number[] => {
		for (let i = 1; i < n; i++) {
			const number = sides[(k + by * i + n * n) % n];
			if (number !== null && number !== undefined) return [number];
		}
		return [];
	};
	return [...nearest(-1), ...nearest(1)];
}

/** One figure for each edge the person knows, however many pieces of outline it is drawn in. */
function edgeFigures(opening: Drawn, backs: readonly (SetBack | null)[]): EdgeFigure[] {
	const figures = new Map<number, EdgeFigure>();
	const round = (x: number): Length => snap(x);
	edgesOf(opening.outline).forEach((e, i) => {
		const n = opening.sides[i];
		const b = backs[i];
		if (!b || n === null || n === undefined) return;
		figures.set(n, {
			edge: n,
			end: b.end,
			length: round(edgeLength(e) + (figures.get(n)?.length ?? 0)),
			cloth: round(b.cloth),
			gap: round(b.gap),
			setIn: round(b.board),
			finishedIn: round(b.finished),
			boardGap: b.boardGap === null ? null : round(b.boardGap),
		});
	});
	return [...figures.values()];
}

function checkEdgeNumbers(bench: Bench, opening: Drawn): void {
	const most = Math.max(...opening.sides.map((s) => s ?? 0));
	bench.panel.edges.own.forEach((o, i) => {
		if (o.edge > most)
			bench.log.check(
				['edges', 'own', i, 'edge'],
				`There is no edge ${o.edge}; the opening has ${most}.`,
				`Give a number from 1 to ${most}.`,
			);
		const first = bench.panel.edges.own.findIndex((other) => other.edge === o.edge);
		if (first < i)
			bench.log.check(
				['edges', 'own', i, 'edge'],
				`Edge ${o.edge} is given twice; what is said here is not heeded.`,
				'Say all that differs at an edge in one place.',
			);
	});
}

function nothingLeft(bench: Bench): null {
	bench.log.stop(
		['opening'],
		'Nothing is left of the board once cloth and clearance are taken off.',
		'Check the size of the opening, the cloth and the clearances.',
	);
	return null;
}

function closedNeck(bench: Bench, opening: Drawn, board: SetOutline): null {
	const [cross] = board.closed;
	if (!cross) throw new Error('bug: no neck closed');
	const names = cross.edges.map((k) => {
		const n = opening.sides[board.from[k] ?? 0];
		return n ? `edge ${n}` : 'a rounded corner';
	});
	bench.log.stop(
		['opening'],
		`The board would close up between ${names.join(' and ')} at ${say(bench, cross.at.x)}, ${say(bench, cross.at.y)}.`,
		'Widen the neck, take less clearance there, or make it two panels.',
	);
	return null;
}

function reportLost(bench: Bench, opening: Drawn, board: SetOutline): void {
	for (const g of board.gone) {
		const n = opening.sides[g.edge];
		const what = n ? `Edge ${n}` : 'A rounded corner';
		const why =
			g.why === 'radius'
				? 'has a radius smaller than cloth and clearance; the board has a sharp corner there'
				: 'is used up by cloth and clearance; its neighbours meet';
		bench.log.check(
			['opening'],
			`${what} ${why}.`,
			'Nothing to do when that is acceptable; otherwise give the opening a larger radius there.',
		);
	}
}
