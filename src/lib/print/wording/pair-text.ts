import { materialOf, sawOf } from '../../job';
import { nth } from '../../measure';
import type { Part } from '../../design';
import type { Rect } from '../../geometry';
import { pieces } from '../../layout';
import { taperOf, type Pair, type Cut, type Placed } from '../../nest';
import type { Plan } from '../../plan';
import type { Figures } from './figures';

/** Parts of one tapered shape, any two of which come out of one rectangle. */
interface Alike {
	readonly parts: Part[];
	readonly pair: Pair;
}

/**
 * What the parts list says of tapered parts, by the id of the part: two of one shape lie head to
 * tail in one rectangle and one slanted cut parts them. Nothing where a router cuts, or where the
 * rectangle is no smaller than two.
 */
export function pairTexts(plan: Plan, figures: Figures): ReadonlyMap<string, string> {
	if (plan.job.shop.method === 'router') return new Map();
	const found = new Map<string, Alike>();
	for (const part of plan.parts) {
		const offer = offerOf(plan, part);
		if (!offer) continue;
		const alike = found.get(offer.key) ?? { parts: [], pair: offer.pair };
		alike.parts.push(part);
		found.set(offer.key, alike);
	}
	const laid = pairsLaid(plan);
	return new Map(
		[...found.values()].flatMap((alike) => {
			if (alike.parts.reduce((sum, p) => sum + p.count, 0) < 2) return [];
			return alike.parts.map((p) => [p.id, textOf(p, alike, laid.has(p.id), figures)] as const);
		}),
	);
}

function offerOf(plan: Plan, part: Part): { key: string; pair: Pair } | null {
	const { kerf } = sawOf(plan.job);
	const material = materialOf(plan.job, part.material);
	const piece = nth(pieces([part], material), 0);
	const taper = part.bevels.length > 0 ? null : taperOf(piece);
	const pair = taper?.pair(piece, kerf);
	if (!taper || !pair) return null;
	const saves = (pair.length + kerf) * (pair.width + kerf);
	if (saves >= 2 * (part.length + kerf) * (part.width + kerf)) return null;
	const size = `${part.length} ${part.width} ${piece.turns}`;
	return { key: `${part.material} ${size} ${taper.key}`, pair };
}

function textOf(part: Part, { parts, pair }: Alike, laid: boolean, figures: Figures): string {
	const others = parts.filter((p) => p !== part).map((p) => p.label);
	const mate = part.count > 1 ? [`another ${part.label}`, ...others] : others;
	const size = figures.size(pair.length, pair.width);
	const so = laid ? 'so it lies on its sheet' : 'the sheets lose nothing by cutting it alone';
	return `Head to tail with ${mate.join(' or ')} from one rectangle ${size} with one slanted cut; ${so}`;
}

/** Ids of the parts that one slanted cut parts from each other in the layouts. */
function pairsLaid(plan: Plan): ReadonlySet<string> {
	const layouts = plan.boards.flatMap((b) => b.answer.layouts);
	return new Set(layouts.flatMap(({ cuts, placed }) => cuts.flatMap((c) => partedBy(c, placed))));
}

/**
 * A slanted cut that loses nothing parts two pieces, whether or not corners come off them
 * afterwards.
 */
function partedBy({ kind, gives }: Cut, placed: readonly Placed[]): string[] {
	if (kind !== 'slant' || gives.some((g) => g.kind === 'waste')) return [];
	const isAt = (a: Rect, b: Rect) =>
		a.x === b.x && a.y === b.y && a.length === b.length && a.width === b.width;
	return placed.filter((p) => gives.some((g) => isAt(g.rect, p))).map((p) => p.id);
}
