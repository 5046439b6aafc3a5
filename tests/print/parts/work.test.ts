import { readFileSync, readdirSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BoxBoard, BoxPlan } from '../../../src/lib/design/box/box-plan';
import type { Part } from '../../../src/lib/design/part';
import { bounds } from '../../../src/lib/geometry/extent';
import { flatten } from '../../../src/lib/geometry/flatten';
import type { Outline, Point } from '../../../src/lib/geometry/outline';
import { mirrored } from '../../../src/lib/geometry/turn';
import { job as jobSchema, type Job } from '../../../src/lib/job/job';
import { readJob } from '../../../src/lib/job/reading/read';
import { designAll } from '../../../src/lib/design/design-all';
import { placesIn } from '../../../src/lib/job/problems/places';
import { partDrawings } from '../../../src/lib/print/parts/part-drawings';
import { figuresOn } from '../../../src/lib/print/wording/figures';
import { made, type Asked } from '../../design/box/make';
import { dividedBox, crossedBox, emptyBox, fullBox, fullTapered } from '../../design/box/random';
import { runs } from '../../depth';
import { areaOf, type Made, offRing, type Ring, type Spot, worked } from './bench-from-words';

/*
 * What a card says is done to the blank by a bench that reads nothing else, and what comes of it is
 * held against the part of the plan.
 */

const RULERS = [
	{ unit: 'mm', fraction: 32, decimal: '.', tick: 1600, off: 0.06 },
	{ unit: 'in', fraction: 64, decimal: '.', tick: 1600 * 25.4, off: 0.009 },
] as const;
type RulerOf = (typeof RULERS)[number];

const spotOn =
	({ tick }: RulerOf) =>
	({ x, y }: Point): Spot => [x / tick, y / tick];
const ringOn = (o: Outline, ruler: RulerOf): Ring => flatten(o, 8).map(spotOn(ruler));

/** A tenth of a degree in the tilt, over the thickness; roundings at both ends of a line. */
function slackOf(part: Part, ruler: RulerOf): number {
	const steepest = Math.max(0, ...part.bevels.map((b) => b.tilt));
	const lean = Math.cos((steepest * Math.PI) / 180) ** -2 * ((0.051 * Math.PI) / 180);
	return 3 * ruler.off + (part.thickness / ruler.tick) * lean;
}

/** How far two rings stand off each other at most. */
const apart = (a: Ring, b: Ring): number =>
	Math.max(...a.map((p) => offRing(p, b)), ...b.map((p) => offRing(p, a)));

function expectSame(is: Ring, wanted: Ring, slack: number, what: string): void {
	expect(apart(is, wanted), what).toBeLessThan(slack * 2);
	const round = wanted.reduce((sum, p, i) => {
		const q = wanted[(i + 1) % wanted.length]!;
		return sum + Math.hypot(p[0] - q[0], p[1] - q[1]);
	}, 0);
	expect(Math.abs(areaOf(is) - areaOf(wanted)), what).toBeLessThan(round * slack);
}

const near = (a: Spot, b: Spot, off: number): boolean =>
	Math.abs(a[0] - b[0]) < off && Math.abs(a[1] - b[1]) < off;

/** Is there work of that kind with exactly these places? */
function has(
	list: readonly Made[],
	like: Partial<Made>,
	places: readonly Spot[],
	off: number,
): boolean {
	return list.some(
		(m) =>
			(like.verb === undefined || m.verb === like.verb) &&
			(like.name === undefined || m.name.endsWith(like.name)) &&
			(like.depth === undefined ||
				((m.depth === null) === (like.depth === null) &&
					Math.abs((m.depth ?? 0) - (like.depth ?? 0)) < off)) &&
			(like.diameter === undefined ||
				Math.abs((m.diameter ?? 0) - (like.diameter ?? 0)) < 2 * off) &&
			// A corner on the way of a straight side need not be told.
			places.every(
				(p) =>
					m.places.some((q) => near(p, q, off)) || (places.length > 4 && offRing(p, m.ring) < off),
			),
	);
}

function cardsOf(box: BoxPlan, part: Part, ruler: RulerOf) {
	const all = partDrawings(
		jobSchema.parse({}),
		[part],
		{ boxes: [box], panels: [] },
		figuresOn(ruler),
	);
	expect(all.filter((d) => d.fault !== undefined)).toEqual([]);
	return all.map(worked);
}

/** The board as its drawing shows it, worked out here from the box's own frame. */
function expectBoard(board: BoxBoard, part: Part, box: BoxPlan, ruler: RulerOf): void {
	const what = `${part.label} ${part.name}, ${ruler.unit}`;
	const cards = cardsOf(box, part, ruler);
	const first = board.view ?? 'outside';
	const wide = board.long.across;
	const see = (o: Outline, side: string): Outline =>
		side === 'outside' ? o : mirrored(o, wide / 2);
	const faceOf = (side: string): Outline =>
		see(side === 'outside' ? board.outside : board.inside, side);
	const home = (side: string): Point => (side === first ? { x: 0, y: 0 } : bounds(faceOf(side)));
	const listed = (side: string): readonly Made[] => cards.find((c) => c.up === side)?.made ?? [];
	const spot = ({ x, y }: Point, side: string): Spot => {
		const from = home(side);
		const at = side === 'outside' ? x : wide - x;
		return [(at - from.x) / ruler.tick, (y - from.y) / ruler.tick];
	};
	const slack = slackOf(part, ruler);
	if (cards.some((c) => c.up === first)) {
		const card = cards.find((c) => c.up === first)!;
		expectSame(card.upper, ringOn(faceOf(first), ruler), slack, `${what}: ${first}`);
		const under = see(first === 'outside' ? board.inside : board.outside, first);
		expectSame(card.lower, ringOn(under, ruler), slack, `${what}: under ${first}`);
	} else {
		expect(
			board.edges.every((e) => e.tilt === 0),
			what,
		).toBe(true);
	}
	const missing: string[] = [];
	const ask = (side: string, like: Partial<Made>, places: readonly Spot[], name: string): void => {
		if (!has(listed(side), like, places, ruler.off * 1.01)) missing.push(`${what}: ${name}`);
	};
	for (const h of board.holes) {
		const side = h.recess === null ? first : (h.face ?? 'outside');
		const depth = h.recess === null ? null : h.recess / ruler.tick;
		const round = h.size.length === 1;
		const like = round
			? { verb: 'Hole', depth, diameter: h.size[0]! / ruler.tick }
			: { verb: depth === null ? 'Cut out' : 'Rout', depth };
		// Corners on the way of a straight side need not be told; curves are looked at elsewhere.
		const corners = h.outline.some((c) => c.bulge) ? [] : h.outline;
		ask(
			side,
			like,
			(round ? [h.centre] : corners).map((p) => spot(p, side)),
			h.name,
		);
	}
	for (const { face, feet } of board.placing)
		for (const foot of feet) {
			const from = face === first ? bounds(faceOf(face)) : { x: 0, y: 0 };
			const at = foot.outline.map(({ x, y }): Spot => [
				(x + from.x) / ruler.tick,
				(y + from.y) / ruler.tick,
			]);
			ask(face, { verb: 'Mark', name: foot.name }, at, `place of ${foot.name} on ${face}`);
		}
	for (const d of board.devices)
		ask(
			d.side,
			{ verb: 'Mark', name: d.name },
			d.body.map((p) => spot(p, d.side)),
			d.name,
		);
	expect(
		listed('inside').filter((m) => m.verb === 'Rabbet'),
		what,
	).toHaveLength(board.rabbets.length);
	expect(missing).toEqual([]);
}

function checkBox(asked: Asked, ruler: RulerOf): void {
	const box = made(asked);
	fc.pre(box.figures !== undefined);
	box.figures.boards.forEach((board, i) => {
		expectBoard(board, box.parts[i]!, box, ruler);
	});
}

describe('the words of a card, done to the blank, make the board of the plan', () => {
	const kinds: readonly (readonly [string, fc.Arbitrary<Asked>])[] = [
		['walls alone', emptyBox],
		['with everything in it', fullBox],
		['leaning on four sides', fullTapered],
		['divided', dividedBox],
		['with braces that cross', crossedBox],
	];
	it.each(kinds)('%s', (_, arbitrary) => {
		fc.assert(fc.property(arbitrary, fc.constantFrom(...RULERS), checkBox), { numRuns: runs(80) });
	});
});

const FILES = readdirSync('shared/jobs').filter((f) => f.endsWith('.json'));
const sample = (file: string): Job =>
	readJob(JSON.parse(readFileSync(`shared/jobs/${file}`, 'utf8'))).job;

describe.each(FILES)('%s', (file) => {
	const job = sample(file);
	const designed = designAll(job, placesIn({}));

	it('has every board of its boxes in words', () => {
		for (const box of designed.boxes)
			box.figures?.boards.forEach((board, i) => {
				for (const ruler of RULERS) expectBoard(board, box.parts[i]!, box, ruler);
			});
	});

	it('has the outline and all that is cut through every other part', () => {
		for (const part of designed.parts.filter((p) => !designed.boxes.some((b) => b.id === p.owner)))
			for (const ruler of RULERS) expectPlain(part, designed, ruler);
	});
});

function expectPlain(part: Part, designed: ReturnType<typeof designAll>, ruler: RulerOf): void {
	const what = `${part.label} ${part.name}, ${ruler.unit}`;
	const cards = partDrawings(jobSchema.parse({}), [part], designed, figuresOn(ruler)).map(worked);
	const [front] = cards;
	if (!front) {
		expect([part.outline, part.holes], what).toEqual([undefined, []]);
		return;
	}
	const whole: Outline = part.outline ?? [
		{ x: 0, y: 0 },
		{ x: part.length, y: 0 },
		{ x: part.length, y: part.width },
		{ x: 0, y: part.width },
	];
	// A bent batten finds the line between places that lie close.
	const between = (smooth: boolean): number => (smooth ? (1.5 * 1600) / ruler.tick : 0);
	expectSame(front.upper, ringOn(whole, ruler), 4 * ruler.off + between(front.smooth), what);
	const cut = front.made.filter((m) => m.depth === null && /^(Hole|Cut out)$/.test(m.verb));
	for (const hole of part.holes) {
		const { x, y, length, width } = bounds(hole);
		const middle = spotOn(ruler)({ x: x + length / 2, y: y + width / 2 });
		const ring = ringOn(hole, ruler);
		const found = cut.some((m) =>
			m.ring.length === 0
				? Math.abs((m.diameter ?? 0) - length / ruler.tick) < 2 * ruler.off &&
					m.places.some((p) => near(p, middle, ruler.off * 1.01))
				: apart(m.ring, ring) < 4 * ruler.off + between(m.smooth),
		);
		expect(found, `${what}: a hole round ${middle.join(', ')}`).toBe(true);
	}
}
