import fc from 'fast-check';
import { runs } from '../depth';
import { describe, expect, it } from 'vitest';
import type { Covering } from '../../src/lib/design/covering';
import { alongEdge, edgesOf, headingAt } from '../../src/lib/geometry/edge';
import { area } from '../../src/lib/geometry/extent';
import { whereIs, distanceTo } from '../../src/lib/geometry/meeting/inside';
import type { Outline, Point } from '../../src/lib/geometry/outline';
import { mirrored, mirrorOrder, turned } from '../../src/lib/geometry/turn';
import { bounds } from '../../src/lib/geometry/extent';
import { circle, rectangle } from '../../src/lib/geometry/shaping/tidy';
import { mm } from '../../src/lib/measure/length';
import { clothShape } from '../../src/lib/wrap/marks/cloth-shape';
import { coveringBlank } from '../../src/lib/wrap/marks/covering-blank';
import { layOver } from '../../src/lib/wrap/girth/girth';
import { crosses } from '../../src/lib/wrap/reliefs/folds';
import { wrapCovering } from '../../src/lib/wrap/wrap-panel';
import { carpet, covering, GROOVED, SHOP } from './make';
import { anyCovering, anyOutline, anyStep } from './random-covering';

const wrap = (c: Covering) => wrapCovering(c, carpet(), SHOP, ['panels', 0]).blanks[0]!;
const inside = (p: Point, o: Outline) => whereIs(p, o) !== 'outside' || distanceTo(p, o) < 4;
const tenths = [0.05, 0.25, 0.5, 0.75, 0.95];

describe('a blank covers its panel', () => {
	it('past every edge, by all that is to be turned under', () => {
		fc.assert(
			fc.property(anyCovering(0), (c) => {
				const shape = clothShape(c);
				edgesOf(c.outline).forEach((edge, i) => {
					for (const t of tenths) {
						const h = headingAt(edge, t);
						const total = shape.flaps[i]!.total;
						const at = alongEdge(edge, t);
						expect(inside({ x: at.x + h.y * total, y: at.y - h.x * total }, shape.outline)).toBe(
							true,
						);
					}
				});
			}),
			{ numRuns: runs(60) },
		);
	});

	it('over every step, in both directions, wherever the tape is laid', () => {
		fc.assert(
			fc.property(
				anyCovering(4),
				fc.array(fc.integer({ min: 0, max: 1000 }), { minLength: 3, maxLength: 3 }),
				(c, at) => {
					const { outline, laid } = clothShape(c);
					const { climb } = laid;
					const box = bounds(c.outline);
					for (const k of at) {
						const y = Math.round(box.y + (box.width * (k + 0.37)) / 1001);
						const x = Math.round(box.x + (box.length * (k + 0.37)) / 1001);
						expect(climb.left + climb.right).toBeGreaterThanOrEqual(
							tape(c, (t) => ({ x: t, y }), box.x, box.length) - 1,
						);
						expect(climb.down + climb.up).toBeGreaterThanOrEqual(
							tape(c, (t) => ({ x, y: t }), box.y, box.width) - 1,
						);
						const p = { x, y };
						if (whereIs(p, c.outline) !== 'inside') continue;
						for (const dx of [-climb.left, climb.right])
							for (const dy of [-climb.down, climb.up])
								expect(inside({ x: p.x + dx, y: p.y + dy }, outline)).toBe(true);
					}
				},
			),
			{ numRuns: runs(60) },
		);
	});
});

/**
 * What a tape climbs along a line, found by walking it: every change from on a layer to off it,
 * well within the board.
 */
function tape(c: Covering, point: (t: number) => Point, from: number, length: number): number {
	const n = 160;
	let climbed = 0;
	let before: boolean[] | null = null;
	for (let i = 0; i <= n; i++) {
		const p = point(from + (length * i) / n);
		const board = whereIs(p, c.outline) === 'inside' && distanceTo(p, c.outline) > mm(0.2);
		if (!board) {
			before = null;
			continue;
		}
		const on = c.steps.map((s) => whereIs(p, s.outline) === 'inside');
		on.forEach((now, k) => {
			if (before && before[k] !== now) climbed += c.steps[k]!.height;
		});
		before = on;
	}
	return climbed;
}

describe('reliefs', () => {
	it('never cross a fold line', () => {
		fc.assert(
			fc.property(anyCovering(2), fc.boolean(), (c, window) => {
				const hole = { outline: circle(mm(500), mm(500), mm(40)), edge: GROOVED };
				const blank = wrap({ ...c, windows: window ? [hole] : [] });
				const folds = blank.marks.filter((m) => m.kind === 'fold');
				for (const cut of blank.marks.filter((m) => m.kind === 'notch' || m.kind === 'slit')) {
					const line = cut.closed ? [...cut.line, cut.line[0]!] : cut.line;
					for (const { line: fold, closed } of folds)
						expect(crosses(line, closed ? [...fold, fold[0]!] : fold)).toBe(false);
				}
			}),
			{ numRuns: runs(60) },
		);
	});
});

describe('steps', () => {
	it('never make the tape shorter by being added, nor a rectangular blank', () => {
		const board = rectangle(mm(300), mm(320), mm(400), mm(350));
		fc.assert(
			fc.property(anyCovering(2), anyStep, (any, step) => {
				const before = layOver(any).climb;
				const after = layOver({ ...any, steps: [...any.steps, step] }).climb;
				expect(after.left + after.right).toBeGreaterThanOrEqual(before.left + before.right);
				expect(after.down + after.up).toBeGreaterThanOrEqual(before.down + before.up);
				const c = { ...any, outline: board, edges: board.map(() => GROOVED) };
				const small = wrap(c);
				const large = wrap({ ...c, steps: [...c.steps, step] });
				expect(large.length).toBeGreaterThanOrEqual(small.length);
				expect(large.width).toBeGreaterThanOrEqual(small.width);
			}),
			{ numRuns: runs(60) },
		);
	});
});

/** How far the corners of one outline lie from the edge of another, at most. */
const farthest = (corners: Outline, from: Outline): number =>
	Math.max(...corners.map((p) => distanceTo(p, from)));

interface Relieved {
	readonly places: number;
	readonly blocked: number;
}

/** Places that ask for a relief cut, those without room for it among them. */
function relievedAt(c: Covering): Relieved {
	const { blank, blocked } = coveringBlank(c, carpet(), SHOP.ruler);
	const { notches, slits, corners } = blank.reliefs;
	return { places: notches + slits + corners + blocked, blocked };
}

describe('a left and a right panel', () => {
	it('get blanks that are mirror images of each other', () => {
		fc.assert(
			fc.property(anyCovering(2), (c) => {
				const left = { ...c, nap: -90 };
				const right: Covering = {
					...left,
					outline: mirrored(c.outline, mm(500)),
					edges: mirrorOrder(c.edges),
					steps: c.steps.map((s) => ({ ...s, outline: mirrored(s.outline, mm(500)) })),
				};
				const a = wrap(left);
				const b = wrap(right);
				expect(Math.abs(a.length - b.length)).toBeLessThanOrEqual(2);
				expect(Math.abs(a.width - b.width)).toBeLessThanOrEqual(2);
				const [places, others] = [left, right].map(relievedAt) as [Relieved, Relieved];
				expect(others.places).toBe(places.places);
				// A cut that grazes another fold to the tick may find room on one hand and none on
				// the other.
				if (places.blocked === 0 && others.blocked === 0) expect(b.reliefs).toEqual(a.reliefs);
				const flipped = b.outline.map((p) => ({ x: p.x, y: b.width - p.y }));
				expect(farthest(flipped, a.outline)).toBeLessThan(mm(0.2));
				expect(farthest(a.outline, flipped)).toBeLessThan(mm(0.2));
			}),
			{ numRuns: runs(60) },
		);
	});

	it('of a shape without symmetry cannot stand in for one another by turning', () => {
		fc.assert(
			fc.property(anyOutline, (outline) => {
				const a = wrap(covering({ outline, nap: -90 })).outline;
				const b = wrap(covering({ outline: mirrored(outline), nap: -90 })).outline;
				for (const by of [0, 90, 180, 270]) {
					const t = turned(b, by);
					const box = bounds(t);
					const there = t.map((p) => ({ x: p.x - box.x, y: p.y - box.y }));
					const apart = Math.max(...there.map((p) => distanceTo(p, a)));
					const own = turned(a.map((p) => ({ x: p.x, y: -p.y })).reverse(), by);
					const ownBox = bounds(own);
					const symmetry = Math.max(
						...own.map((p) => distanceTo({ x: p.x - ownBox.x, y: p.y - ownBox.y }, a)),
					);
					// Only a shape that is its own mirror image may match; then the pair is one and
					// the same blank.
					if (symmetry > mm(3)) expect(apart).toBeGreaterThan(mm(1));
				}
				expect(area(a)).toBeGreaterThan(0);
			}),
			{ numRuns: runs(40) },
		);
	});
});
