import { runs } from '../depth';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../src/lib/job/job';
import { settingsFor } from '../../src/lib/nest/saw/cutting/fence-setting';
import type { Cut } from '../../src/lib/nest/types';
import { plan, type Plan } from '../../src/lib/plan';
import { stripBlocks, stripWork } from '../../src/lib/print/sheet/strips/strip-blocks';
import { figuresOn, type SheetAt } from '../../src/lib/print/wording';
import { cutWords } from '../../src/lib/ui/chapters/boards/cut-words';
import { wordsOn } from '../print/words-on';
import { samples } from './samples';

const QUICK = { effort: 200 };

/** The sheets still to be cut on the saw: those that the labour counts. */
function sheetsOf(made: Plan): { at: SheetAt; cuts: readonly Cut[] }[] {
	return made.boards.flatMap((boards) =>
		boards.answer.layouts.flatMap((layout, index) =>
			boards.sources[index]?.cut || layout.cuts.length === 0
				? []
				: [{ at: { plan: made, boards, index }, cuts: layout.cuts }],
		),
	);
}

function onPaper({ at }: ReturnType<typeof sheetsOf>[number]): number {
	const page = { width: 180, height: 240 };
	const blocks = stripBlocks(stripWork(at, page, figuresOn(at.plan.job.shop.ruler))!);
	const rows = blocks.map((block) => wordsOn(block.marks)).filter(([name]) => isCut(name));
	const set = rows.filter((row) => !/slant|trim/.test(row[0] ?? ''));
	const standing = set.filter((row) => /as (it|for)/.test(row.join(' ')));
	return set.length - standing.length + sum(rows.map(skims));
}

const isCut = (name = ''): boolean => /^\d+(–\d+)? (trim|rip|crosscut|slant)$/.test(name);

/** Settings that a row of trims stands for, one an edge. */
function skims([name]: readonly string[]): number {
	const [, first, last = first] = /^(\d+)(?:–(\d+))? trim$/.exec(name ?? '') ?? [];
	return first === undefined ? 0 : Number(last) - Number(first) + 1;
}

function atTheBench({ at, cuts }: ReturnType<typeof sheetsOf>[number]): number {
	const figures = figuresOn(at.plan.job.shop.ruler);
	const words = cuts.map((cut, i) => cutWords(at, cut, cuts[i - 1], figures));
	return words.filter((w) => w.fence !== '' && !w.same).length;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((all, n) => all + n, 0);

function inTheQuote(made: Plan): number {
	const lines = made.quote.labour.filter((line) => line.what === 'Fence settings');
	return sum(lines.map((line) => line.amount));
}

function expectAlike(made: Plan): number {
	const sheets = sheetsOf(made);
	const quoted = inTheQuote(made);
	expect(sum(sheets.map(onPaper))).toBe(quoted);
	expect(sum(sheets.map(atTheBench))).toBe(quoted);
	return quoted;
}

describe('the quote, the printed cutting lists and the bench count the same fence settings', () => {
	it.each(samples)('$name', async ({ file }) => {
		expectAlike(await plan(file, QUICK));
	});

	it('random lists of parts', async () => {
		const size = fc.integer({ min: 6, max: 45 }).map((n) => n * 20);
		const part = fc.record({ length: size, width: size, count: fc.integer({ min: 1, max: 4 }) });
		const job = fc.record({
			parts: fc.array(part, { minLength: 1, maxLength: 6 }),
			factoryEdges: fc.boolean(),
		});
		let settings = 0;
		await fc.assert(
			fc.asyncProperty(job, async ({ parts, factoryEdges }) => {
				settings += expectAlike(await plan(jobOf(parts, factoryEdges), { effort: 40 }));
			}),
			{ numRuns: runs(25), seed: 1 },
		);
		expect(settings).toBeGreaterThan(100);
	});
});

function jobOf(
	parts: readonly { readonly length: number; readonly width: number; readonly count: number }[],
	factoryEdges: boolean,
): JobFile {
	return {
		stock: {
			materials: [{ id: 'ply', name: 'Plywood', nominal: 18, measured: 18 }],
			sheets: [{ id: 's', material: 'ply', length: 1220, width: 1000, factoryEdges }],
		},
		parts: parts.map((p, i) => ({ id: `P${i}`, material: 'ply', ...p })),
	};
}

describe('the fence stands there already', () => {
	const cut = (kind: Cut['kind'], fence: number, more: Partial<Cut> = {}): Cut =>
		({ kind, runs: 'x', fence, fenceEdge: 'bottom', ...more }) as Cut;

	it('only for the same distance from the same edge, the cut running the same way', () => {
		expect(settingsFor([cut('rip', 100), cut('rip', 100)])).toBe(1);
		expect(settingsFor([cut('trim', 100), cut('rip', 100)])).toBe(1);
		expect(settingsFor([cut('rip', 100), cut('rip', 101)])).toBe(2);
		expect(settingsFor([cut('rip', 100), cut('rip', 100, { fenceEdge: 'top' })])).toBe(2);
		expect(settingsFor([cut('rip', 100), cut('cross', 100, { runs: 'y' })])).toBe(2);
	});

	it('never for a slanted cut, nor after one', () => {
		expect(settingsFor([cut('slant', 0), cut('slant', 0)])).toBe(0);
		expect(settingsFor([cut('rip', 0), cut('slant', 0), cut('rip', 0)])).toBe(2);
	});
});
