import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { made, MATERIALS } from '../design/box/make';
import { runs } from '../depth';
import { wallsOf, type Joints } from './boards';
import { asked, ENDS, forms, thickness, wallBoards } from './random-box';

const MM = 1600;
const JOINTS: readonly Joints[] = ['level-past', 'upright-past', 'mitre'];
/** Faces snap outward to the grid, each end by less than a tick or two. mm */
const GRID = 0.005;

const box = fc.record({
	form: forms,
	boards: wallBoards,
	joint: fc.constantFrom(...JOINTS),
	fit: fc.constantFrom(...ENDS),
});

describe('boards of a box, worked a second time from the numbers of the job', () => {
	it('are cut to the same sizes with the same tilts', () => {
		let seen = 0;
		fc.assert(
			fc.property(box, ({ form, boards, joint, fit }) => {
				const { figures, problems } = made(asked(form, boards, { joint, fit }));
				fc.pre(figures !== undefined && !problems.some((p) => p.kind === 'stop'));
				const thick = thickness(boards);
				const across = form.width - (fit === 'over' ? thick('left') + thick('right') : 0);
				for (const [name, wall] of wallsOf(form, joint, thick)) {
					const board = figures.boards.find((b) => b.key === name);
					if (!board) throw new Error(`no ${name}`);
					expect(Math.abs(board.long.across / MM - across), name).toBeLessThan(GRID);
					expect(Math.abs(board.long.up / MM - wall.cut), `${name} cut`).toBeLessThan(GRID);
					expect(Math.abs(board.short.up / MM - wall.short), `${name} short`).toBeLessThan(GRID);
					const tilts = board.edges.map((e) => e.tilt).sort((a, b) => a - b);
					// The two edges at the ends of the box are square where the ends are plain.
					wall.tilts.forEach((tilt, i) => expect(tilts[2 + i], name).toBeCloseTo(tilt, 1));
					seen++;
				}
			}),
			{ numRuns: runs(200) },
		);
		expect(seen).toBeGreaterThan(60);
	});

	it('ends are as large as the side view, or as what is left between the walls', () => {
		fc.assert(
			fc.property(box, ({ form, boards, joint, fit }) => {
				const { figures, problems } = made(asked(form, boards, { joint, fit }));
				fc.pre(figures !== undefined && !problems.some((p) => p.kind === 'stop'));
				const thick = thickness(boards);
				const between = fit === 'between';
				const whole = form.kind === 'slanted' ? Math.max(form.depth, form.top) : form.depth;
				const depth = whole - (between ? thick('front') + backAtFloor(form, thick) : 0);
				const height = form.height - (between ? thick('top') + thick('bottom') : 0);
				for (const end of figures.boards.filter((b) => b.role === 'end')) {
					expect(Math.abs(end.long.up / MM - height), end.key).toBeLessThan(GRID);
					if (form.kind !== 'slanted' || !between)
						expect(Math.abs(end.long.across / MM - depth), end.key).toBeLessThan(GRID);
				}
			}),
			{ numRuns: runs(100) },
		);
	});

	it('a box of 600 x 400 x 300 in 18 mm by hand', () => {
		const board = { ...MATERIALS[0] };
		const thick = () => board.measured as number;
		const plain = {
			kind: 'plain' as const,
			width: 600,
			height: 400,
			depth: 300,
			top: 0,
			step: { x: 0, y: 0 },
		};
		const sizes = wallsOf(plain, 'level-past', thick);
		expect(sizes.get('top')).toEqual({ cut: 300, short: 300, tilts: [0, 0] });
		expect(sizes.get('front')?.cut).toBeCloseTo(364, 9);
		const mitred = wallsOf(plain, 'mitre', thick).get('back');
		expect(mitred?.cut).toBeCloseTo(400, 9);
		expect(mitred?.short).toBeCloseTo(364, 9);
		expect(mitred?.tilts[0]).toBeCloseTo(45, 9);
	});
});

const backAtFloor = (form: { kind: string }, thick: (board: string) => number): number =>
	form.kind === 'slanted' ? 0 : thick('back');
