import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { z } from '../../src/lib/job/zod';
import { plan, type Plan } from '../../src/lib/plan';
import { recordOf, recordSchemaText } from '../../src/lib/record/record';
import { samples } from '../plan/samples';

const committed = readFileSync(new URL('../../shared/plan.schema.json', import.meta.url), 'utf8');
const schema = JSON.parse(committed) as z.core.JSONSchema.JSONSchema;
const check = z.fromJSONSchema(schema);

/** What stands in the file, as another program reads it. */
const written = (made: Plan): unknown => JSON.parse(JSON.stringify(recordOf(made)));

test('shared/plan.schema.json says what the code writes: after a change run npm run schema', () => {
	expect(committed).toBe(recordSchemaText());
});

/** Every figure under these, in the plan's own units. */
function numbersIn(value: unknown, found: number[] = []): number[] {
	if (typeof value === 'number') found.push(value);
	else if (typeof value === 'object' && value !== null)
		for (const inner of Object.values(value)) numbersIn(inner, found);
	return found;
}

/** The file has twelve significant digits of a figure. */
const asWritten = (n: number): number => Number(n.toPrecision(12));

const key = (n: number): string => (Math.round(n * 1e6) / 1e6 + 0).toString();

/**
 * What the pages of summary, boxes, panels, cloth, order and quote are written from. Where a device
 * is asked to stand is the job's, not the plan's.
 */
function printedFrom(made: Plan): unknown {
	return {
		boxes: made.boxes.map(({ mass, figures }) => ({ mass, figures })),
		panels: made.panels.map(({ detail }) => ({
			...detail,
			devices: detail?.devices.map(({ at: _, ...device }) => device),
		})),
		cloth: made.blanks,
		parts: made.parts,
		rolls: made.cloths.flatMap((c) => c.rolls.map(({ pull, napless }) => ({ pull, napless }))),
		ways: made.carpets,
		order: made.order,
		quote: made.quote,
		needs: made.needs,
	};
}

describe.each(samples)('$name', ({ file }) => {
	const made = plan(file, { effort: 20 });

	it('is written as the schema says', async () => {
		const result = check.safeParse(written(await made));
		expect(result.error?.issues.slice(0, 5) ?? []).toEqual([]);
	});

	it('can be reckoned again from the file alone', async () => {
		const { boxes, blanks, order, quote } = written(await made) as Reckoned;
		const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);
		for (const { gross, deductions, net } of boxes.flatMap((b) => b.figures?.chambers ?? []))
			expect(gross - sum(deductions.map((d) => d.litres))).toBeCloseTo(net, 6);
		for (const { face, climbs, ends, total } of blanks.flatMap((b) => Object.values(b.girth ?? {})))
			expect(face + climbs + sum(ends)).toBeCloseTo(total, 6);
		for (const { buy, each, total } of order.lines) expect(buy * each).toBeCloseTo(total, 6);
		expect(sum(order.lines.map((l) => l.total))).toBeCloseTo(order.total, 6);
		expect(sum(quote.lines.map((l) => l.price))).toBeCloseTo(quote.net, 6);
		expect(quote.cost + quote.materialMarkup + quote.profit).toBeCloseTo(quote.net, 6);
		expect(quote.net + quote.tax).toBeCloseTo(quote.total, 6);
	});

	it('holds every figure its pages are written from', async () => {
		const p = await made;
		const file = new Set(numbersIn(written(p)).map(key));
		const missing = numbersIn(printedFrom(p)).filter(
			(n) => ![n, n / 1600, n / 100].some((as) => file.has(key(asWritten(as)))),
		);
		expect(missing).toEqual([]);
	});
});

/** As much of the file as is reckoned again. */
interface Reckoned {
	readonly boxes: readonly {
		readonly figures?: {
			readonly chambers: readonly {
				readonly gross: number;
				readonly deductions: readonly { readonly litres: number }[];
				readonly net: number;
			}[];
		};
	}[];
	readonly blanks: readonly { readonly girth?: Readonly<Record<'along' | 'across', GirthFile>> }[];
	readonly order: {
		readonly lines: readonly Readonly<Record<'buy' | 'each' | 'total', number>>[];
		readonly total: number;
	};
	readonly quote: { readonly lines: readonly { readonly price: number }[] } & Readonly<
		Record<'cost' | 'materialMarkup' | 'profit' | 'net' | 'tax' | 'total', number>
	>;
}

interface GirthFile {
	readonly face: number;
	readonly climbs: number;
	readonly ends: readonly [number, number];
	readonly total: number;
}

type Node = Readonly<Record<string, unknown>>;

/** Every property of every object of the schema: its name and what it leads to, told or not. */
function propertiesOf(node: unknown, found: [string, Node][] = []): [string, Node][] {
	if (typeof node !== 'object' || node === null) return found;
	const { properties } = node as { properties?: Record<string, Node> };
	for (const [name, of] of Object.entries(properties ?? {})) found.push([name, of]);
	for (const inner of Object.values(node)) propertiesOf(inner, found);
	return found;
}

describe('the schema', () => {
	const { $defs } = schema as { $defs: Record<string, Node> };
	const meant = (of: Node): Node =>
		typeof of['$ref'] === 'string' ? { ...$defs[of['$ref'].replace('#/$defs/', '')], ...of } : of;
	const isNumber = (of: Node): boolean =>
		[of, ...((of['anyOf'] as Node[] | undefined) ?? [])]
			.map(meant)
			.some((o) => ['number', 'integer'].some((t) => [o['type']].flat().includes(t)));
	const UNITS =
		/^(dB|W|m\/s|mm|mm2|cm2|L|kg|Hz|degrees|per cent|count|no unit|in the currency of the job): \S/;

	it('tells of every figure what it is and in which unit', () => {
		const figures = propertiesOf(schema).filter(([, of]) => isNumber(meant(of)));
		expect(figures.length).toBeGreaterThan(150);
		const untold = figures.filter(([, of]) => {
			const all = [meant(of), ...((meant(of)['anyOf'] as Node[] | undefined) ?? []).map(meant)];
			return !all.some((o) => UNITS.test(String(o['description'] ?? '')));
		});
		expect(untold.map(([name]) => name)).toEqual([]);
	});

	it('lets no figure in that it does not tell of', () => {
		const open = JSON.stringify(schema).match(/"type":"object"/g) ?? [];
		const closed = JSON.stringify(schema).match(/"additionalProperties":false/g) ?? [];
		expect(closed.length).toBe(open.length);
	});
});

test('what a place asks of the cloth without end is null', async () => {
	const made = await plan(samples.find((s) => s.name === 'panel-stepped-cover.json')!.file, {
		effort: 5,
	});
	const verdict = { where: '', asks: Infinity, gives: 3, takes: false, text: '' };
	const blanks = made.blanks.map((b) => ({ ...b, verdicts: [verdict] }));
	const file = written({ ...made, blanks });
	expect(check.safeParse(file).success).toBe(true);
	expect(file).toMatchObject({ blanks: blanks.map(() => ({ verdicts: [{ asks: null }] })) });
});

describe('a figure that is not told of', () => {
	it('is a bug, and so is one that is none', async () => {
		const made = await plan({}, { effort: 5 });
		expect(() => recordOf({ ...made, search: { ...made.search, luck: 7 } as never })).toThrow(
			'bug:',
		);
		expect(() => recordOf({ ...made, order: { ...made.order, total: NaN as never } })).toThrow(
			'bug:',
		);
	});
});
