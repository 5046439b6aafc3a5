import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { planPanel } from '../../../src/lib/design/panel/plan-panel';
import { panelSectionOf } from '../../../src/lib/design/panel/layers/section';
import { regionArea } from '../../../src/lib/geometry/shaping/clip';
import type { Job } from '../../../src/lib/job/job';
import { readJob } from '../../../src/lib/job/reading/read';
import { mm } from '../../../src/lib/measure/length';
import type { Plan } from '../../../src/lib/plan';
import type { Drawing } from '../../../src/lib/print/drawing/drawing';
import { panelDrawings } from '../../../src/lib/print/panel/drawings';
import { planned } from '../../design/panel/stock';
import { namesStruck, wordsOn } from '../words-on';

const samples = readdirSync('shared/jobs').filter((f) => /^(panel-|camper|hatch).*\.json$/.test(f));
const sample = (file: string): Job => {
	const read = readJob(JSON.parse(readFileSync(`shared/jobs/${file}`, 'utf8')));
	expect(read.problems).toEqual([]);
	return read.job;
};
const texts = (d: Drawing): string[] => wordsOn(d.marks);
/** All its words in one run, whatever keeps them on a line. */
const said = (d: Drawing): string => texts(d).join(' ').replaceAll('\u00a0', ' ');
/** Drawings read of the plan no more than its job. */
const draw = (job: Job, id: string): Drawing[] => {
	const panel = planPanel(
		job.panels.find((p) => p.id === id)!,
		job,
		['panels', 0],
	);
	return panelDrawings({ job } as Plan, panel);
};

describe.each(samples)('%s', (file) => {
	test('every drawing has its marks on its paper and figures that are numbers', () => {
		const job = sample(file);
		for (const panel of job.panels)
			for (const d of draw(job, panel.id)) {
				expect(d.fault).toBeUndefined();
				expect(d.title).toMatch(new RegExp(`^(${panel.name}|P\\d+(\\.\\d+)?[LR]?(, |  *))`));
				expect(d.marks.length).toBeGreaterThan(5);
				for (const m of d.marks) {
					const xy =
						m.kind !== 'path'
							? [[m.x, m.y]]
							: m.steps.map((s) => (s.slice(-2) as number[]).filter((n) => typeof n === 'number'));
					for (const [x, y] of xy.filter((p) => p.length === 2)) {
						expect(x! > -20 && x! < d.width + 20 && y! > -20 && y! < d.height + 20).toBe(true);
					}
				}
				expect(texts(d).join(' ')).not.toMatch(/NaN|undefined|Infinity/);
			}
	});

	test('no line strikes a name on the front view or the section', () => {
		const job = sample(file);
		for (const { id, name, ...panel } of job.panels) {
			const things = [panel.layers, panel.covers, panel.windows, panel.devices, panel.zones];
			const names = things.flatMap((list) => list.map((thing) => thing.name));
			const isName = (text: string) => names.some((n) => text.includes(n)) || text === 'Board';
			const views = draw(job, id).filter((d) => / (finished|A–A)$/.test(d.title));
			expect(views.length, name).toBeGreaterThan(0);
			expect(views.flatMap((d) => namesStruck(d.marks, isName))).toEqual([]);
		}
	});
});

test('opening, board and finished sizes stand on the front view, the groove on the back', () => {
	const job = sample('panel-stepped-cover.json');
	const [front, section, board, back, raised] = draw(job, 'cover');
	expect(texts(front!)).toEqual(
		expect.arrayContaining([
			'opening 940',
			'board 933',
			'finished 939',
			'board 430.5',
			'Phone tray −6.3',
			'Raised field +6.3',
		]),
	);
	expect(texts(front!).join(' ')).toContain(
		'Edges 2, 3, 4, 5, 6: wrapped, gap 0.5, board 3.5 inside the opening',
	);
	expect(texts(section!)).toEqual(
		expect.arrayContaining(['A–A', 'Battery cover', 'Ledge of Battery cover']),
	);
	expect(said(board!)).toContain('Mark 2 Raised field: → ');
	expect(said(raised!)).toContain('Cut out 3 opening for Accent strip: 3a → ');
	expect(said(back!)).toContain('12 from the edge, 4 wide, 5 deep');
});

test('the name of a step stands on that step, not on the one upon it', () => {
	const job = sample('camper-bench.json');
	const front = draw(job, job.panels[0]!.id).find((d) => / finished$/.test(d.title))!;
	const at = (text: string) => front.marks.find((m) => m.kind === 'text' && m.text.includes(text))!;
	const [first, second] = [at('First step'), at('Second step')];
	if (first.kind !== 'text' || second.kind !== 'text') throw new Error('no names');
	// The second step is the smallest outline that is drawn wide.
	const boxes = front.marks.flatMap((m) => {
		if (m.kind !== 'path' || m.line !== 'wide' || m.steps.length < 6) return [];
		const ends = m.steps.flatMap((s) => (s[0] === 'Z' ? [] : [s.slice(-2).map(Number)]));
		const [xs, ys] = [ends.map(([x]) => x!), ends.map(([, y]) => y!)];
		return [{ xs: [Math.min(...xs), Math.max(...xs)], ys: [Math.min(...ys), Math.max(...ys)] }];
	});
	const [least] = boxes.sort((p, q) => p.xs[1]! - p.xs[0]! - (q.xs[1]! - q.xs[0]!));
	const inside = ({ x, y }: { x: number; y: number }) =>
		x > least!.xs[0]! && x < least!.xs[1]! && y > least!.ys[0]! && y < least!.ys[1]!;
	expect([inside(first), inside(second)]).toEqual([false, true]);
});

test('a pair is drawn twice, the right one mirrored: same sizes, marked R', () => {
	const drawings = draw(sample('panel-quarter-pair.json'), 'quarter');
	const [left, right] = ['left (L)', 'right (R)'].map((hand) =>
		drawings.find((d) => d.title.includes(hand)),
	);
	expect(texts(right!).sort()).toEqual(texts(left!).sort());
	expect(right!.marks).not.toEqual(left!.marks);
	const [boardL, boardR] = ['P1L ', 'P1R '].map((label) =>
		drawings.find((d) => d.title.startsWith(label))!,
	);
	const size = / · (\d[^·]* × [\d.]+)/;
	expect(size.exec(said(boardL!))![1]).toBe(size.exec(said(boardR!))![1]);
	expect(said(boardL!)).not.toBe(said(boardR!).replaceAll('P1R', 'P1L'));
});

test('every hole of an equipment board has its place from the lower left corner', () => {
	const board = draw(sample('panel-stepped-cover.json'), 'rack').find((d) =>
		said(d).includes('front up'),
	)!;
	// From the board itself: the amplifier stands at 40, 70 and its first hole at 12, 14 of it.
	expect(said(board)).toContain('Holes 1 to 4 for Four-channel amplifier: 4 × Ø 3.5');
	expect(said(board)).toContain('1 → 52 ↑ 84');
	expect(texts(board).filter((t) => /^\d+\u00a0→/.test(t))).toHaveLength(6);
});

test('section A-A: the cloth in the cut has the thickness of the cloth', () => {
	const rect = (length: number, width: number) => ({ kind: 'rectangle', length, width }) as const;
	const plan = planned({
		opening: rect(307, 207),
		cloth: 'carpet',
		layers: [{ id: 'step', outline: { shape: rect(100, 100), x: 100, y: 50 }, material: 'ply-6' }],
	});
	const section = panelSectionOf(plan.detail!)!;
	expect(section.boards.map((b) => [b.to - b.from, b.high - b.low])).toEqual([
		[mm(300), mm(12)],
		[mm(100), mm(6)],
	]);
	const cut = section.cloths.flatMap((c) => c.regions).reduce((sum, r) => sum + regionArea(r), 0);
	// Face 306 and both steps 2 x 6, both edges 2 x 12, both turn-unders of 16 and the cloth on the
	// edge, all 3 thick.
	expect(cut / 1600 ** 2).toBeCloseTo(3 * (306 + 12 + 24 + 2 * 19), 3);
});
