import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import type { Cut } from '../../../src/lib/nest/types';
import { plan } from '../../../src/lib/plan';
import type { Mark } from '../../../src/lib/print/drawing/drawing';
import { cutGroups, everyGroup } from '../../../src/lib/print/sheet/strips/cut-groups';
import { stripBlocks, stripWork } from '../../../src/lib/print/sheet/strips/strip-blocks';
import { stripDrawing, stripScene } from '../../../src/lib/print/sheet/strips/strip-drawing';
import { stripLayout } from '../../../src/lib/print/sheet/strips/turned-layout';
import { figuresOn } from '../../../src/lib/print/wording';
import { runs } from '../../depth';
import { samples } from '../../plan/samples';
import { textsOff, textsOn, textsOverTexts, wordsOn } from '../words-on';
import { expectSawn, type Sheet, sheetsOf } from './held-against-plan';

const QUICK = { effort: 200 };
const PAGE = { width: 180, height: 240 };

/** Random parts, many of which crowd one sheet. */
const parts = fc.array(
	fc.record({
		length: fc.integer({ min: 6, max: 60 }).map((n) => n * 20),
		width: fc.integer({ min: 5, max: 40 }).map((n) => n * 15),
		count: fc.integer({ min: 1, max: 6 }),
	}),
	{ minLength: 1, maxLength: 9 },
);

type Listed = { length: number; width: number; count: number };

function jobOf(list: readonly Listed[], shop: JobFile['shop'] = {}): JobFile {
	return {
		shop: { saws: [{ id: 'saw', name: 'Bench saw', kerf: 3.2 }], ...shop },
		stock: {
			materials: [{ id: 'mdf', name: 'MDF 12', kind: 'mdf', nominal: 12, measured: 12.1 }],
			sheets: [{ id: 'whole', material: 'mdf', length: 2440, width: 1220, price: 30 }],
		},
		parts: list.map((p, i) => ({
			id: `p${i}`,
			name: `Part ${i}`,
			material: 'mdf',
			...p,
		})),
	};
}

async function random(check: (sheet: Sheet) => void, shop: JobFile['shop'] = {}): Promise<void> {
	await fc.assert(
		fc.asyncProperty(parts, async (list) => {
			const made = await plan(jobOf(list, shop), { effort: 40 });
			const sheets = sheetsOf(made);
			expect(sheets.length).toBeGreaterThan(0);
			for (const sheet of sheets) check(sheet);
		}),
		{ numRuns: runs(120) },
	);
}

/** The rows of all lists of a sheet, as cells. */
function rowsOf({ at }: Sheet): string[][] {
	const blocks = stripBlocks(stripWork(at, PAGE, figuresOn(at.plan.job.shop.ruler))!);
	return blocks
		.map((block) => joined(block.marks.filter((m) => m.of?.startsWith('cut:'))))
		.filter(([name]) => /^\d+(–\d+)? (trim|rip|crosscut|slant)$/.test(name ?? ''));
}

/** Lines of one cell, which stand at one place one under the other, joined again. */
function joined(marks: readonly Mark[]): string[] {
	const cells = new Map<number, string>();
	for (const m of textsOn(marks))
		cells.set(m.x, cells.has(m.x) ? `${cells.get(m.x)} ${m.text}` : m.text);
	return [...cells.values()];
}

function groupsHold({ layout }: Sheet): void {
	const groups = everyGroup(cutGroups(layout)!);
	const listed = groups.flatMap((g) => g.cuts.map((c) => c.n)).sort((a, b) => a - b);
	expect(listed).toEqual(layout.cuts.map((c) => c.n));
	for (const group of groups) {
		// Every strip falls from a cut of the group it is named in.
		for (const strip of group.strips) {
			const gives = group.cuts.flatMap((c) => c.gives);
			expect(gives.some((g) => g.rect === strip.region || same(g.rect, strip.region))).toBe(true);
		}
		// A drawing of more than eight cuts has but one way of cutting, and what is soon done.
		const way = group.cuts.filter((c) => c.kind !== 'trim');
		if (way.length > 8)
			expect(group.strips.length + way.filter(alike(way[0]!)).length).toBeGreaterThan(2);
	}
}

const alike = (first: Cut) => (c: Cut) => c.runs === first.runs;
const same = (a: object, b: object): boolean => JSON.stringify(a) === JSON.stringify(b);

const wordsSaw = (sheet: Sheet): void => expectSawn(sheet, rowsOf(sheet));

/** A strip turned along the page holds the same things, none over another or over a cut. */
function turnedHolds({ layout, kerf }: Sheet): void {
	for (const { region } of everyGroup(cutGroups(layout)!)) {
		const strip = stripLayout(layout, region, kerf);
		expect(strip.length).toBeGreaterThanOrEqual(strip.width);
		expect(strip.length * strip.width).toBe(region.length * region.width);
		for (const cut of strip.cuts.filter((c) => c.kind !== 'slant')) {
			const [low, high] = cut.gives;
			const axis = cut.runs === 'x' ? 'y' : 'x';
			const long = cut.runs === 'x' ? 'width' : 'length';
			expect(low.rect[axis] + low.rect[long]).toBeLessThanOrEqual(cut.at);
			if (high.kind !== 'nothing' && high.rect[long] > 0)
				expect(high.rect[axis]).toBeGreaterThanOrEqual(cut.at + kerf);
			for (const p of strip.placed) {
				const across = p[axis] < cut.at + kerf && p[axis] + p[long] > cut.at;
				const other = axis === 'x' ? 'y' : 'x';
				const side = axis === 'x' ? 'width' : 'length';
				const beside =
					p[other] + p[side] <= cut.region[other] ||
					p[other] >= cut.region[other] + cut.region[side];
				expect(across && !beside).toBe(false);
			}
		}
	}
}

/** Nothing written over anything written, nor over the edge. */
function wordsClear({ at, layout }: Sheet): void {
	for (const group of everyGroup(cutGroups(layout)!)) {
		const drawing = stripDrawing(
			stripScene(at, group),
			{ width: 180, height: 100 },
			figuresOn(at.plan.job.shop.ruler),
		);
		expect(textsOverTexts(drawing.marks)).toEqual([]);
		expect(textsOff(drawing)).toEqual([]);
		const flags = wordsOn(drawing.marks.filter((m) => m.of?.startsWith('cut:')));
		expect(flags.map(Number).sort((a, b) => a - b)).toEqual(group.cuts.map((c) => c.n));
	}
}

const INCHES: JobFile['shop'] = { ruler: { unit: 'in', fraction: 32 } };

describe.each([
	['each cut has one drawing and one list', groupsHold],
	['a saw that knows only the printed words ends with the parts of the plan', wordsSaw],
	['a strip turned along the page is the strip on the sheet', turnedHolds],
	['no word stands over another, and each cut has its flag', wordsClear],
])('%s', (_, check) => {
	it.each(samples)('$name', async ({ file }) => {
		for (const sheet of sheetsOf(await plan(file, QUICK))) check(sheet);
	});

	it('random lists of parts', () => random(check));

	it('random lists in inches', () => random(check, INCHES));
});
