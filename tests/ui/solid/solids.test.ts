import { describe, expect, test } from 'vitest';
import { type BoxBoard, designAll } from '../../../src/lib/design';
import { area } from '../../../src/lib/geometry';
import { placesIn, readJob } from '../../../src/lib/job';
import { meshOf } from '../../../src/lib/ui/solid/mesh';
import { solidOfBox, solidOfPanel, type Solids } from '../../../src/lib/ui/solid/solid-of';
import { samples } from '../../plan/samples';

/*
 * The solid view is drawn from facets; that they are those of the boards is held against what the
 * plan says of the boards in other words: how many, their corners, and wood by volume.
 */

interface Shape {
	/** Sum of normals times areas: zero for a surface that closes. */
	readonly open: number;
	/** cubic mm */
	readonly volume: number;
}

/** By the triangles as they go to the graphics card: cones from the origin to each of them. */
function shapeOf(body: Solids['bodies'][number]): Shape {
	const { places } = meshOf(body);
	const sum = { x: 0, y: 0, z: 0, volume: 0 };
	for (let i = 0; i < places.length; i += 9) {
		const [ax = 0, ay = 0, az = 0, bx = 0, by = 0, bz = 0, cx = 0, cy = 0, cz = 0] = places.slice(
			i,
			i + 9,
		);
		const u = [bx - ax, by - ay, bz - az] as const;
		const v = [cx - ax, cy - ay, cz - az] as const;
		const n = [
			u[1] * v[2] - u[2] * v[1],
			u[2] * v[0] - u[0] * v[2],
			u[0] * v[1] - u[1] * v[0],
		] as const;
		sum.x += n[0] / 2;
		sum.y += n[1] / 2;
		sum.z += n[2] / 2;
		sum.volume += (ax * n[0] + ay * n[1] + az * n[2]) / 6;
	}
	return { open: Math.hypot(sum.x, sum.y, sum.z), volume: sum.volume };
}

const MM3 = 1600 ** 3;

/** Wood of a board, cubic mm, by the areas of its faces, without the holes that lie within it. */
function woodOf(b: BoxBoard): number {
	const [out, inn] = [Math.abs(area(b.outside)), Math.abs(area(b.inside))];
	const halfway = b.outside.map((p, i) => ({
		x: (p.x + (b.inside[i]?.x ?? 0)) / 2,
		y: (p.y + (b.inside[i]?.y ?? 0)) / 2,
	}));
	const whole = (b.thickness / 6) * (out + 4 * Math.abs(area(halfway)) + inn);
	const holes = b.holes.map((h) => Math.abs(area(h.outline)) * (h.recess ?? b.thickness));
	return (whole - holes.reduce((sum, v) => sum + v, 0)) / MM3;
}

describe.each(samples)('$name in the solid view', ({ file }) => {
	const { job, unsized } = readJob(file);
	const plan = designAll(job, placesIn(file), unsized);
	const boxes = plan.boxes.flatMap((box) => {
		const solids = solidOfBox(box, job);
		return solids && box.figures ? [{ box, figures: box.figures, solids }] : [];
	});
	const panels = plan.panels.flatMap((panel) => {
		const solids = solidOfPanel(panel);
		return solids ? [{ panel, solids }] : [];
	});

	test('every box and panel that is planned is there, each board once, with its corners', () => {
		expect(boxes.length).toBe(plan.boxes.filter((b) => b.figures).length);
		expect(panels.length).toBe(plan.panels.filter((p) => p.detail).length);
		for (const { figures, solids } of boxes) {
			const marked = solids.bodies.filter((b) => b.mark !== null);
			expect(marked.map((b) => b.mark)).toEqual(figures.boards.map((b) => b.label));
			figures.boards.forEach((board, i) => {
				const corners = [...board.solid.outside, ...board.solid.inside];
				const drawn = marked[i]?.lines.flat() ?? [];
				const isThere = (c: { x: number; y: number; z: number }): boolean =>
					drawn.some(
						(p) => Math.hypot(p.x - c.x / 1600, p.y - c.y / 1600, p.z - c.z / 1600) < 1e-6,
					);
				expect(corners.filter((c) => !isThere(c))).toEqual([]);
			});
		}
		for (const { panel, solids } of panels) {
			const own = panel.parts.filter((p) => !(panel.detail?.both && p.id.endsWith('-R')));
			for (const part of own) expect(solids.bodies.map((b) => b.mark)).toContain(part.label);
		}
	});

	test('every body closes', () => {
		for (const { solids } of [...boxes, ...panels])
			for (const body of solids.bodies) expect(shapeOf(body).open, body.key).toBeLessThan(25);
	});

	test('boards of boxes have their wood', () => {
		for (const { figures, solids } of boxes)
			for (const board of figures.boards) {
				if (board.holes.some((h) => h.of === 'halving')) continue;
				const body = solids.bodies.find((b) => b.key === board.key);
				const wood = woodOf(board);
				expect(Math.abs((body ? shapeOf(body).volume : 0) - wood) / wood, board.key).toBeLessThan(
					0.004,
				);
			}
	});

	test('pieces of panels have theirs', () => {
		for (const { panel, solids } of panels)
			for (const body of solids.bodies) {
				const part = panel.parts.find((p) => p.label === body.mark);
				if (!part) continue;
				const outline = part.outline ? Math.abs(area(part.outline)) : part.length * part.width;
				const net = outline - part.holes.reduce((sum, h) => sum + Math.abs(area(h)), 0);
				const wood = (net * part.thickness) / MM3;
				expect(Math.abs(shapeOf(body).volume - wood) / wood, body.key).toBeLessThan(0.004);
			}
	});
});
