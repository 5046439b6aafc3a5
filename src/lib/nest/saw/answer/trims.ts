import type { Rect } from '../../../geometry';
import type { Length } from '../../../measure';
import type { OpenGives } from './cuts';
import type { Cut, Gives, SawProblem, Sheet } from '../../types';

/*
 * Squaring the factory edges, before anything else is cut. The trim of an edge is all that is lost
 * there: the blade runs inside it, at its inner side, so what is left over for the scrap bin is the
 * trim less the kerf. A trim thinner than the kerf is taken with the blade hanging over the edge;
 * nothing falls off then, and `at` is the sheet's own edge.
 */

type Edge = 'left' | 'right' | 'bottom' | 'top';

// long edges first: they guide the rest
const ORDER: readonly Edge[] = ['bottom', 'top', 'left', 'right'];

/**
 * The trim cuts, numbered from 1, what remains, and the last one's kept side, which has no
 * `nextCut` yet.
 */
export function trimCuts(
	sheet: Sheet,
	problem: Pick<SawProblem, 'kerf' | 'fenceLimit'>,
): { cuts: Cut[]; rest: Rect; kept: OpenGives | null } {
	let rest: Rect = { x: 0, y: 0, length: sheet.length, width: sheet.width };
	let kept: OpenGives | null = null;
	const edges = ORDER.filter((e) => sheet.trim[e] > 0);
	const cuts = edges.map((e, i) => {
		const more = i < edges.length - 1;
		const cut = trimCut(rest, { edge: e, trim: sheet.trim[e], n: i + 1, more }, problem);
		rest = cut.kept.rect;
		kept = cut.kept;
		return cut.made;
	});
	return { cuts, rest, kept };
}

/**
 * One edge to be squared: how much is lost there, the number of the cut, and whether another edge
 * follows.
 */
interface TrimStep {
	readonly edge: Edge;
	readonly trim: number;
	readonly n: number;
	readonly more: boolean;
}

function trimCut(
	region: Rect,
	{ edge, trim, n, more }: TrimStep,
	{ kerf, fenceLimit }: Pick<SawProblem, 'kerf' | 'fenceLimit'>,
): { made: Cut; kept: OpenGives } {
	const isX = edge === 'left' || edge === 'right';
	const low = edge === 'left' || edge === 'bottom';
	const [start, size] = isX ? [region.x, region.length] : [region.y, region.width];
	const span = (from: number, long: number): Rect =>
		isX ? { ...region, x: from, length: long } : { ...region, y: from, width: long };
	const scrap = Math.max(0, trim - kerf);
	const at = low ? start + scrap : start + size - trim;
	const kept: OpenGives = {
		kind: 'strip',
		rect: low ? span(start + trim, size - trim) : span(start, size - trim),
		...(more ? { nextCut: n + 1 } : {}),
	};
	const off: Gives = {
		kind: scrap > 0 ? 'waste' : 'nothing',
		rect: span(low ? start : start + size - scrap, scrap),
	};
	const opposite = { left: 'right', right: 'left', bottom: 'top', top: 'bottom' } as const;
	const reach = fenceLimit === null || size - trim <= fenceLimit;
	const made: Cut = {
		n,
		kind: 'trim',
		runs: isX ? 'y' : 'x',
		region,
		at: at as Length,
		fence: (reach ? size - trim : scrap) as Length,
		fenceEdge: reach ? opposite[edge] : edge,
		gives: low ? [off, kept] : [kept, off],
	};
	return { made, kept };
}
