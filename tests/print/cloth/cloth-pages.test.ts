import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it, test } from 'vitest';
import { plan, type Plan } from '../../../src/lib/plan';
import { blankDrawings, rollDrawing, rollPages } from '../../../src/lib/print/cloth';
import { clipped } from '../../../src/lib/print/drawing/clip';
import type { Drawing, PathMark, TextMark } from '../../../src/lib/print/drawing/drawing';
import { textBox } from '../../../src/lib/print/drawing/text-box';
import type { Leaf } from '../../../src/lib/print/page/setting';
import { wordsOn } from '../words-on';
import { gluingOf, PACE, paceOf } from '../../../src/lib/wrap/stages';

const JOBS = new URL('../../../shared/jobs/', import.meta.url);
interface JobText {
	readonly stock?: { readonly rolls?: readonly { readonly width: number }[] };
	readonly shop?: object;
}
const read = (name: string): JobText =>
	JSON.parse(readFileSync(new URL(name, JOBS), 'utf8')) as JobText;
const names = readdirSync(JOBS).filter((name) => name.endsWith('.json'));

/**
 * Lines of fold, trim, relief cuts and the rest that a word of the blank lies over; the hairs of
 * the pile are covered by the blank that lies on it.
 */
function crossed({ marks }: Drawing): string[] {
	const words = marks.filter((m): m is TextMark => m.kind === 'text' && m.halo === true);
	const lines = marks.filter((m): m is PathMark => m.kind === 'path' && m.of === undefined);
	return words.flatMap((word) => {
		const box = textBox(word);
		const met = lines.filter(
			(l) => l.line !== undefined && l.line !== 'hair' && clipped(l.steps, box).length > 0,
		);
		return met.map((l) => `${word.text} over a ${l.line} line`);
	});
}

describe.each(names)('the cloth of %s', (name) => {
	let made: Plan;
	beforeAll(async () => {
		made = await plan(read(name), { effort: 1 });
	});

	it('bears no words over a fold, a trim line or a relief cut', () => {
		const drawings = [
			...made.blanks.flatMap((blank) => blankDrawings(blank, made)),
			...made.cloths.flatMap(({ rolls }) => rolls.map((roll) => rollDrawing(roll, made))),
		];
		expect(drawings.flatMap(crossed)).toEqual([]);
	});

	it('lies by the nap where it has one, else along the roll', () => {
		const lies = rollPages(made).flatMap(({ blocks }) =>
			blocks
				.flatMap(({ marks }) => wordsOn(marks))
				.filter((t) => /^(with the nap|along the roll)$/.test(t)),
		);
		const wanted = made.cloths.flatMap(({ cloth, rolls }) => {
			const bare = made.job.stock.cloths.find((c) => c.id === cloth)!.nap === 'none';
			const lying = rolls.flatMap((roll) => roll.answer.placed).filter((p) => p.turn === 0);
			return lying.map(() => (bare ? 'along the roll' : 'with the nap'));
		});
		expect(lies.sort()).toEqual(wanted.sort());
	});

	it('is glued in stages that can be closed in time, all of it', () => {
		for (const blank of made.blanks) {
			const stages = gluingOf(blank, made.job);
			const area = stages.reduce((sum, s) => sum + s.area, 0);
			expect(area).toBeCloseTo((blank.bonded + (blank.foam ?? 0)) / 1e6, 9);
			for (const { coat, dry, lay, open } of stages)
				expect(coat + dry + lay).toBeLessThanOrEqual(open + 1e-6);
		}
	});
});

const words = (drawing: Pick<Drawing, 'marks'>): string[] =>
	drawing.marks.flatMap((m) => (m.kind === 'text' ? [m.text] : []));

const wordsOfLeaf = ({ blocks }: Leaf): string[] => blocks.flatMap(words);

describe('a roll with selvedges', () => {
	const trimmed = async (selvedge: number, more: object = {}): Promise<Plan> => {
		const job = read('camper-bench.json');
		const rolls = job.stock?.rolls?.map((roll) => ({
			...roll,
			usable: roll.width - 2 * selvedge,
			lot: 'L7',
			code: 'NC-1',
		}));
		return plan({ ...job, stock: { ...job.stock, rolls }, ...more }, { effort: 1 });
	};

	test('is drawn in full; figures run from its own edge', async () => {
		const made = await trimmed(15);
		const roll = made.cloths[0]!.rolls[0]!;
		const width = roll.problem.width / 1600;
		const drawing = rollDrawing(roll, made);
		expect(drawing.title).toContain(`${width + 30} wide, ${width} of it usable`);
		expect(words(drawing).join(' ')).toContain('selvedge, not used');
		expect(words(drawing)).toContain(String(width + 30));
		const lowest = Math.min(...roll.answer.placed.map((p) => p.y)) / 1600;
		expect(lowest).toBe(0);
		expect(words(drawing)).toContain('15');
		const pages = rollPages(made).flatMap(wordsOfLeaf);
		expect(pages.some((t) => t.includes('code NC-1') && t.includes('dye lot L7'))).toBe(true);
	});

	test('without them says the width and nothing more', async () => {
		const made = await trimmed(0);
		const drawing = rollDrawing(made.cloths[0]!.rolls[0]!, made);
		expect(drawing.title).not.toContain('usable');
		expect(words(drawing).join(' ')).not.toContain('selvedge');
	});
});

test('the checklist of gluing has a row for every stage, by the adhesive of the shop', async () => {
	const job = read('camper-bench.json');
	const shop = { ...job.shop, adhesive: { way: 'brushed', open: 8 } };
	const made = await plan({ ...job, shop }, { effort: 1 });
	const stages = made.blanks.flatMap((b) =>
		gluingOf(b, made.job).map((s) => [b.label, s] as const),
	);
	expect(stages.length).toBeGreaterThan(made.blanks.length);
	const told = rollPages(made)
		.filter((leaf) => leaf.name === 'Wrapping')
		.flatMap(wordsOfLeaf);
	for (const [, { what, n, of }] of stages)
		expect(told.join('\n')).toContain(of === 1 ? what : `${what}, stage ${n} of ${of}`);
	expect(told.filter((t) => t === '8 min').length).toBeGreaterThanOrEqual(stages.length);
	expect(paceOf({ way: 'sprayed', open: null })).toEqual(PACE.sprayed);
});
