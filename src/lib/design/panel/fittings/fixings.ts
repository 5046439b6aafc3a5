import { nth, snap, mm } from '../../../measure';
import { distanceTo, whereIs, type Outline, type Point } from '../../../geometry';
import { materialOf, type Panel } from '../../../job';
import { say, type Bench } from '../bench';
import type { FixingFigure, Fit } from '../figures';
import { RIM, SCREW_EDGE } from './edge-distance';
import type { GrooveSize } from './groove';
import { spacedOn, Walk, type OnLine } from './spaced';
import { grownBy } from '../fit';

const STRIDE: number = mm(4);

type Asked = NonNullable<Panel['fixings']>;

/**
 * Something a fixing must not come near: its outline, and how near the rim of the hole may come.
 */
export interface KeepOut {
	readonly name: string;
	readonly outline: Outline;
}

/**
 * Fixings round the edge: at the corners and no farther apart than asked, each slid along the edge
 * when something is in its way, left out (and said) when nothing within half a spacing is free.
 */
export function fixingFigure(
	bench: Bench,
	fit: Fit,
	groove: GrooveSize | null,
	forbidden: readonly KeepOut[],
): FixingFigure | null {
	const asked = bench.panel.fixings;
	if (!asked) return null;
	const inset = clearOfGroove(bench, asked, groove);
	const line = grownBy(fit.board, -inset);
	if (!line) {
		bench.log.check(
			['fixings', 'inset'],
			`Fixings ${say(bench, inset)} from the edge find no place on this board.`,
			'Set them nearer to the edge.',
		);
		return null;
	}
	reportEdge(bench, asked, inset);
	const reach = asked.hole / 2 + RIM;
	const spacing = clearOfEachOther(bench, asked);
	const free = (p: Point): boolean => forbidden.every((f) => clearOf(p, f.outline, reach));
	const walk = new Walk(line);
	const placed = spacedOn(line, spacing).map((p) => slid(walk, p, spacing / 2, free));
	const kept = placed.filter((p) => p !== null).sort((a, b) => a.along - b.along);
	const widest = widestGap(kept, walk.total);
	reportGaps(bench, asked, placed.length - kept.length, widest);
	return {
		kind: asked.kind,
		at: kept.map((p) => p.at),
		hole: asked.hole,
		depth: withinBoard(bench, asked),
		inset: snap(inset),
		widest: snap(widest),
	};
}

/** So near the edge, a screw splits the board and a clip breaks out of it. */
function reportEdge(bench: Bench, { kind, hole }: Asked, inset: number): void {
	const round = hole / 2 + RIM;
	const least = kind === 'screws' ? Math.max(SCREW_EDGE, round) : round;
	if (inset >= least) return;
	bench.log.check(
		['fixings', 'inset'],
		`The middles of the fixings are ${say(bench, inset)} from the edge of the board: with holes of ${say(bench, hole)} it breaks there.`,
		`Set them ${say(bench, least)} or more from the edge.`,
	);
}

/** A hole as deep as the board would come out in the face, or be no seat for what it holds. */
function withinBoard(bench: Bench, { depth }: Asked): FixingFigure['depth'] {
	const thick = materialOf(bench.job, bench.panel.material)?.measured;
	if (depth === null || thick === undefined || depth < thick) return depth;
	bench.log.check(
		['fixings', 'depth'],
		`Holes for the fixings ${say(bench, depth)} deep go through the board, which is ${say(bench, thick)} thick.`,
		`Give less than ${say(bench, thick)}, or leave the depth empty.`,
	);
	return depth;
}

/** Nearer than a hole and its rim, the holes would run into one another. */
function clearOfEachOther(bench: Bench, { hole, spacing }: Asked): number {
	const least = hole + RIM;
	if (spacing >= least) return spacing;
	bench.log.check(
		['fixings', 'spacing'],
		`Fixings ${say(bench, spacing)} apart would run into one another; they are planned ${say(bench, least)} apart.`,
		`Give ${say(bench, least)} or more; ${bench.log.say([mm(100), mm(150)], ' to ')} is common.`,
	);
	return least;
}

/** Fixings stand inside the groove, or far enough outside it. */
function clearOfGroove(bench: Bench, asked: Asked, groove: GrooveSize | null): number {
	if (!groove) return asked.inset;
	const reach = asked.hole / 2 + RIM;
	const outside = groove.offset - reach;
	const inside = groove.offset + groove.width + reach;
	if (asked.inset <= outside || asked.inset >= inside) return asked.inset;
	bench.log.check(
		['fixings', 'inset'],
		`Fixings ${say(bench, asked.inset)} from the edge would meet the knife groove; they are planned at ${say(bench, inside)}.`,
		`Give ${say(bench, inside)} or more.`,
	);
	return inside;
}

function clearOf(p: Point, outline: Outline, reach: number): boolean {
	return whereIs(p, outline) === 'outside' && distanceTo(p, outline) >= reach;
}

function slid(
	walk: Walk,
	wanted: OnLine,
	most: number,
	free: (p: Point) => boolean,
): OnLine | null {
	if (free(wanted.at)) return wanted;
	for (let by = STRIDE; by <= most; by += STRIDE)
		for (const side of [1, -1]) {
			const along = (wanted.along + side * by + walk.total) % walk.total;
			const at = walk.at(along);
			if (free(at)) return { along, at };
		}
	return null;
}

function widestGap(kept: readonly OnLine[], total: number): number {
	if (kept.length < 2) return total;
	return kept.reduce((widest, p, i) => {
		const next = kept[i + 1]?.along ?? nth(kept, 0).along + total;
		return Math.max(widest, next - p.along);
	}, 0);
}

function reportGaps(bench: Bench, asked: Asked, lost: number, widest: number): void {
	if (lost > 0)
		bench.log.check(
			['fixings'],
			`${lost === 1 ? 'One fixing finds' : `${lost} fixings find`} no place free of zones, covers and cut-outs; the widest gap is ${say(bench, widest)}.`,
			'Move what is in the way, or hold the panel there by other means.',
		);
	else if (widest > asked.spacing * 1.5)
		bench.log.check(
			['fixings'],
			`Moved clear of what was in the way, two fixings are ${say(bench, widest)} apart.`,
			'Look whether the panel needs one more between them.',
		);
}
