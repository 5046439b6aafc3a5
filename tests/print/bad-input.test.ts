import { describe, expect, it } from 'vitest';
import { plan, type Plan } from '../../src/lib/plan';
import { pagesOf, type PdfKind } from '../../src/lib/print/output-files';
import { printPack } from '../../src/lib/print/pack';
import { sample } from '../plan/samples';
import { wordsOn, textsOff } from './words-on';

/*
 * What cannot be printed is said, and the rest is printed. Letters that no face has are looked at
 * in `drawing/unprintable.test.ts`, drawings that cannot be made in `undrawn.test.ts`.
 */

const KINDS: readonly PdfKind[] = [
	'print-pack',
	'labels',
	'templates',
	'quote',
	'cost-sheet',
	'counter-lists',
];
const file = sample('camper-bench.json') as Record<string, unknown> & {
	readonly boxes: readonly object[];
	readonly panels: readonly object[];
};
const made = await plan(file, { effort: 20, seed: 1 });
const titles = (of: Plan): string[] => printPack(of).map((page) => page.title);

describe('a name of 300 letters', () => {
	const name = 'W'.repeat(300);

	it('is said by its place with how long it may be, and the rest is printed', async () => {
		const [first, ...others] = file.panels;
		const panels = [{ ...first, name }, ...others];
		const long = await plan({ ...file, name, customer: name, panels }, { effort: 20, seed: 1 });
		const told = long.problems.filter((p) => p.kind === 'stop');
		expect(told.map((p) => p.path.join('.')).sort()).toEqual(['customer', 'name', 'panels.0.name']);
		for (const problem of told)
			expect(`${problem.what} ${problem.fix}`).toMatch(/At most \d+ characters/);
		const all = titles(long).join(' ');
		for (const title of ['Sheet 1', 'Amplifier board', 'Bench box', 'Cloth blanks'])
			expect(all).toContain(title);
		for (const page of printPack(long)) expect(textsOff(page), page.name).toEqual([]);
	});
});

describe('the longest names that may be', () => {
	it.each([
		['of many words', 'Rear bench with a long name '.repeat(11).slice(0, 119)],
		['of one word', 'W'.repeat(120)],
	])('%s leave every page standing, and no text of it off the paper', async (_, name) => {
		const named = (thing: object) => ({ ...thing, name });
		const things = { boxes: file.boxes.map(named), panels: file.panels.map(named) };
		const words = { name, customer: name, vehicle: name };
		const long = await plan({ ...file, ...words, ...things }, { effort: 20, seed: 1 });
		for (const kind of KINDS) {
			const pages = pagesOf(kind, long);
			expect(pages.length, kind).toBeGreaterThan(0);
			for (const page of pages) {
				expect(page.fault, kind).toBeUndefined();
				expect(textsOff(page), `${kind}: ${page.name.slice(0, 60)}`).toEqual([]);
			}
		}
	});
});

describe('a layout that fails its check', () => {
	const faults = [{ where: 'sheet 1', what: 'two parts overlap' }];
	const [torn, ...others] = made.boards;
	const refused: Plan = { ...made, boards: [{ ...torn!, faults }, ...others] };
	const said = printPack(refused).map((page) => wordsOn(page.marks).join(' '));

	it('is refused in words, with what the check found', () => {
		const page = said.find((text) => text.includes('Not printed: the layouts of'));
		expect(page).toContain('two parts overlap');
		expect(said.join(' ')).not.toContain('Sheet 1 of 2: Birch plywood 18');
	});

	it('takes no other sheet, part or cloth along', () => {
		const all = titles(refused).join(' ');
		for (const title of ['Sheet 1 of 1: MDF 12', 'After the saw', 'Bench box', 'Cloth blanks'])
			expect(all).toContain(title);
	});
});

describe('a page too small for its drawing', () => {
	it('has it smaller, within the paper, or goes on on the next', async () => {
		const huge = await plan(
			{
				stock: {
					materials: [{ id: 'ply', name: 'Ply 18', nominal: 18, measured: 18 }],
					sheets: [{ id: 's', material: 'ply', length: 20_000, width: 900, price: 1 }],
				},
				parts: [
					{ id: 'long', name: 'Rail', material: 'ply', length: 19_500, width: 30, count: 12 },
					{ id: 'slip', name: 'Slip', material: 'ply', length: 5, width: 2, count: 1 },
				],
			},
			{ effort: 20, seed: 1 },
		);
		const pages = printPack(huge);
		expect(pages.some((page) => page.title.includes('Sheet 1'))).toBe(true);
		for (const page of pages) {
			expect(page.fault).toBeUndefined();
			expect(textsOff(page), page.name).toEqual([]);
			const far = page.marks.flatMap((m) =>
				m.kind === 'path' ? m.steps.flatMap(([, ...n]) => n as readonly number[]) : [],
			);
			expect(Math.max(...far)).toBeLessThanOrEqual(Math.max(page.width, page.height));
		}
	});
});
