import { describe, expect, it } from 'vitest';
import { designAll } from '../../../src/lib/design';
import { type JobFile, placesIn, readJob, valueAt, type Path } from '../../../src/lib/job';
import { mm, readLength, handOf, type Ruler, writeLength } from '../../../src/lib/measure';
import { isSolved, lengthStored, storeLength } from '../../../src/lib/ui/fields';
import { arrange } from '../../../src/lib/ui/stage/arrange';
import { boxStage, panelStage } from '../../../src/lib/ui/stage';
import { draggedBy, keyMove, markOf } from '../../../src/lib/ui/stage/drag';
import { put } from '../../../src/lib/ui/state/edits/path';
import type { Grip, Measure, StageView } from '../../../src/lib/ui/stage/stage-view';
import { samples } from '../../plan/samples';

/** The views of every box and panel of a job, and what of them is worked out for a volume. */
function viewsOf(file: JobFile): { views: StageView[]; solved: (path: Path) => boolean } {
	const read = readJob(file);
	const { job } = read;
	const design = designAll(job, placesIn(file), read.unsized);
	const boxes = design.boxes.flatMap(({ id, figures }) => {
		const index = job.boxes.findIndex((b) => b.id === id);
		const box = job.boxes[index];
		return box && figures ? boxStage({ box, figures, at: ['boxes', index] }) : [];
	});
	const panels = design.panels.flatMap(({ id, detail }) => {
		const index = job.panels.findIndex((p) => p.id === id);
		const panel = job.panels[index];
		return panel && detail ? panelStage({ panel, detail, at: ['panels', index] }) : [];
	});
	const solved = ([list, index, part, ...field]: Path): boolean => {
		const box = list === 'boxes' && part === 'shape' ? job.boxes[Number(index)] : undefined;
		return box !== undefined && isSolved(box, field);
	};
	return { views: [...boxes, ...panels], solved };
}

const measures = (views: readonly StageView[]): Measure[] => views.flatMap((v) => v.measures);
const grips = (views: readonly StageView[]): Grip[] => views.flatMap((v) => v.grips);

describe.each(samples)('the drawing that is the form, of $name', ({ file }) => {
	const { views, solved } = viewsOf(file);

	it('shows at each dimension what the field it stands for holds', () => {
		for (const { path, value, label } of measures(views)) {
			if (path === null || solved(path)) continue;
			const stored = lengthStored(valueAt(file, path));
			// A place that is not said is the middle, which the drawing shows.
			if (stored === null) expect(path.slice(-2)[0], label).toBe('at');
			else expect(stored.ok && Math.abs(stored.value - value) <= 3, label).toBe(true);
		}
	});

	it('takes a drag and the typed figure for the same', () => {
		for (const ruler of RULERS) {
			for (const { moves, label } of grips(views)) {
				const by = { x: 37.4 * markOf(ruler), y: -11.6 * markOf(ruler) };
				for (const { value } of draggedBy(moves, by, ruler)) {
					const dragged = lengthStored(value);
					expect(dragged?.ok, label).toBe(true);
					if (!dragged?.ok) continue;
					const text = writeLength(dragged.value, ruler);
					expect(storeLength(text, ruler), label).toBe(value);
					expect(readLength(text, handOf(ruler)), label).toEqual(dragged);
				}
			}
		}
	});

	it('shows a thing where it was dragged to', () => {
		const [ruler] = RULERS;
		for (const { moves, label } of grips(views)) {
			for (const move of moves) {
				const by = { x: 0, y: 0, [move.along]: 2 * mm(1) * move.grows };
				const [change] = draggedBy([move], by, ruler);
				const dragged = lengthStored(change?.value);
				if (!change || !dragged?.ok) throw new Error(`nothing moved: ${label}`);
				const after = grips(viewsOf(put(file, change.path, change.value)).views);
				const there = after.find((g) => g.moves.some((m) => m.path.join() === move.path.join()));
				// What no longer fits is drawn as it stood before.
				if (!there) continue;
				const moved = there.moves.find((m) => m.path.join() === move.path.join());
				expect(Math.abs((moved?.value ?? 0) - dragged.value), label).toBeLessThanOrEqual(3);
			}
		}
	});

	it('stays within the window, letters and all', () => {
		for (const view of views) {
			for (const [width, height] of [
				[800, 520],
				[358, 300],
			] as const) {
				for (const { x, y, scale, view: v } of arrange([view], width, height)) {
					expect(x + v.around.x * scale).toBeGreaterThanOrEqual(0);
					expect(x + (v.around.x + v.around.length) * scale).toBeLessThanOrEqual(width);
					expect(y - v.around.y * scale).toBeLessThanOrEqual(height);
				}
			}
		}
	});
});

const RULERS: readonly [Ruler, ...Ruler[]] = [
	{ unit: 'mm', fraction: 32, decimal: '.' },
	{ unit: 'cm', fraction: 32, decimal: ',' },
	{ unit: 'in', fraction: 32, decimal: '.' },
];

it('some sample has a grip of each kind: faces, drivers, vents, braces, layers, covers, devices', () => {
	const seen = samples.flatMap(({ file }) =>
		grips(viewsOf(file).views).flatMap((g) => g.moves.map((m) => m.path.join('/'))),
	);
	for (const kind of [
		/shape\/(width|height|depth)/,
		/shape\/lean/,
		/drivers/,
		/braces/,
		/layers/,
		/covers/,
		/devices/,
		/opening\/(length|width)/,
	])
		expect(
			seen.some((path) => kind.test(path)),
			String(kind),
		).toBe(true);
});

it('an arrow key moves by a mark of the ruler, and by ten with Shift', () => {
	const [ruler] = RULERS;
	expect(keyMove('ArrowUp', false, ruler)).toEqual({ x: 0, y: 1600 });
	expect(keyMove('ArrowLeft', true, ruler)).toEqual({ x: -16_000, y: 0 });
	expect(keyMove('Tab', false, ruler)).toBeNull();
	const move = { path: ['a'], along: 'x', grows: 1, value: mm(100.4), least: 0 } as const;
	expect(draggedBy([move], { x: 1600, y: 0 }, ruler)).toEqual([{ path: ['a'], value: 101 }]);
	expect(draggedBy([move], { x: -mm(900), y: 0 }, ruler)).toEqual([{ path: ['a'], value: 0 }]);
});
