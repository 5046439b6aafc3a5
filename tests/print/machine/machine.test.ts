import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import DxfParser from 'dxf-parser';
import { beforeAll, describe, expect, test } from 'vitest';
import { area, type Outline } from '../../../src/lib/geometry';
import { rectangle, tidy } from '../../../src/lib/geometry/shaping';
import { importShape } from '../../../src/lib/design/import';
import { plan, type Plan } from '../../../src/lib/plan';
import { writeDxf } from '../../../src/lib/print/machine/dxf';
import { LAYERS } from '../../../src/lib/print/machine/layers';
import {
	type MachineDrawing,
	type MachineLine,
	roundOf,
} from '../../../src/lib/print/machine/machine-drawing';
import { machineDrawings, machineFiles } from '../../../src/lib/print/machine/machine-files';
import { writeSvg } from '../../../src/lib/print/machine/svg';
import { zipped } from '../../../src/lib/print/machine/zip';
import { runs } from '../../depth';
import { allJobs } from '../../net/bases';

/* Whatever a machine reads of a part is the part of the plan, to the grid. */

const JOBS = new URL('../../../shared/jobs/', import.meta.url);
const TICKS = 1600;
const MM = { unit: 'mm', fraction: 32, decimal: '.' } as const;

/** What an independent reader finds: lines on layers, millimetres. */
interface Found {
	readonly layer: string;
	readonly type: string;
	readonly vertices?: readonly { x: number; y: number; bulge?: number }[];
	readonly shape?: boolean;
	readonly center?: { x: number; y: number };
	readonly radius?: number;
	readonly text?: string;
}

function foundIn(dxf: string): readonly Found[] {
	const read = new DxfParser().parseSync(dxf);
	expect(read?.header).toMatchObject({ $ACADVER: 'AC1009', $INSUNITS: 4 });
	return read?.entities ?? [];
}

/** The grid as the reader's millimetres should give it, and no more than a rounding of them off. */
function onGrid(mm: number): number {
	const ticks = Math.round(mm * TICKS * 2) / 2;
	expect(Math.abs(mm * TICKS - ticks)).toBeLessThan(1e-6);
	return ticks;
}

/** A line as it was read, in ticks, and as it should be. */
const read = (f: Found) => ({
	layer: f.layer,
	closed: f.type === 'CIRCLE' || f.shape === true,
	line: f.center
		? [f.center, { x: f.radius ?? 0, y: 0 }].map((p) => ({ x: onGrid(p.x), y: onGrid(p.y) }))
		: (f.vertices ?? []).map((v) => ({ x: onGrid(v.x), y: onGrid(v.y), bulge: v.bulge ?? 0 })),
});
function wanted({ layer, line, closed }: MachineLine) {
	const round = closed ? roundOf(line) : null;
	if (round) return { layer, closed, line: [round.centre, { x: round.radius, y: 0 }] };
	const straight = !closed && line.length === 2 && !line[0]?.bulge;
	return {
		layer,
		closed,
		line: line.map(({ x, y, bulge }, i) => ({
			x: x + 0,
			y: y + 0,
			bulge: straight || (!closed && i === line.length - 1) ? 0 : (bulge ?? 0),
		})),
	};
}

function expectAllOf(drawing: MachineDrawing): void {
	const lines = foundIn(writeDxf(drawing)).filter(({ layer }) => layer !== 'TEXT');
	expect(lines.map(read), drawing.name).toEqual(drawing.lines.map(wanted));
}

const corner = fc.record({
	x: fc.integer({ min: -4_000_000, max: 4_000_000 }),
	y: fc.integer({ min: -4_000_000, max: 4_000_000 }),
	bulge: fc.oneof(
		fc.constant(0),
		fc.double({ min: -3, max: 3, noNaN: true, noDefaultInfinity: true }),
	),
});
const anyLine = fc
	.record({
		layer: fc.constantFrom(...(Object.keys(LAYERS) as MachineLine['layer'][])),
		line: fc.array(corner, { minLength: 2, maxLength: 9 }),
		closed: fc.boolean(),
	})
	.filter(({ layer }) => layer !== 'TEXT');

describe('any lines', () => {
	test('are read back by another reader: layer, corners to the grid, bulges to the last digit', () => {
		fc.assert(
			fc.property(fc.array(anyLine, { maxLength: 6 }), (lines) => {
				const empty = { name: 'x', title: 'x', length: 1, width: 1, notes: [], texts: [] };
				expectAllOf({ ...empty, lines });
			}),
			{ numRuns: runs(200) },
		);
	});

	test('a circle is a circle, a straight line a line, an arc in an outline a bulge', () => {
		const circle: Outline = [
			{ x: 0, y: 801, bulge: 1 },
			{ x: 1600, y: 801, bulge: 1 },
		];
		const rounded: Outline = [
			{ x: 0, y: 0 },
			{ x: 1600, y: 0, bulge: 0.41421356 },
			{ x: 3200, y: 1600 },
		];
		const line = (of: Outline, closed = true): MachineLine => ({ layer: 'MARK', line: of, closed });
		const lines = [line(circle), line(rounded), line(rounded.slice(0, 2), false)];
		const drawing = {
			name: 'x',
			title: 'x',
			length: 3200,
			width: 1600,
			notes: [],
			texts: [],
			lines,
		};
		const found = foundIn(writeDxf(drawing)).filter(({ layer }) => layer === 'MARK');
		expect(found.map(({ type }) => type)).toEqual(['CIRCLE', 'POLYLINE', 'LINE']);
		expect(found[0]).toMatchObject({ center: { x: 0.5, y: 0.500625 }, radius: 0.5 });
		const svg = writeSvg(drawing);
		expect(svg).toContain('<circle cx="0.5" cy="-0.500625" r="0.5"/>');
		// A left turn, from the right side up: against the clock on paper, no large arc.
		expect(svg).toMatch(/d="M0 0L1 0A[\d.]+ [\d.]+ 0 0 0 2 -1L0 0Z"/);
	});

	test('words that would break a file are told plainly', () => {
		const text = 'Żółć\r\n0\r\nEOF ^J 100 %%d 3 × 4';
		const drawing = {
			name: 'x',
			title: text,
			length: 1,
			width: 1,
			lines: [],
			texts: [],
			notes: [text],
		};
		const told = foundIn(writeDxf(drawing)).map((f) => f.text);
		expect(told[0]).toBe('\\U+017B\\U+00F3\\U+0142\\U+0107 0 EOF ^ J 100 % %d 3 x 4');
		expect(writeSvg({ ...drawing, notes: ['<script>&"'] })).toContain('&lt;script&gt;&amp;&quot;');
	});
});

/** The samples, and small jobs in which every field of a job is used. */
const cases: readonly (readonly [name: string, job: { readonly shop?: object | undefined }])[] = [
	...readdirSync(JOBS)
		.filter((name) => name.endsWith('.json'))
		.map(
			(name) => [name, JSON.parse(readFileSync(new URL(name, JOBS), 'utf8')) as object] as const,
		),
	...allJobs().map((job) => [`small: ${job.name}`, job] as const),
];

describe.each(cases)('%s, cut by router', (_, job) => {
	let made: Plan;
	let drawings: readonly MachineDrawing[];
	beforeAll(async () => {
		made = await plan({ ...job, shop: { ...job.shop, method: 'router' } }, { effort: 1 });
		drawings = machineDrawings(made);
	});

	test('every part, blank, routed sheet and roll has its two files, and each its own name', () => {
		const sheets = made.boards.flatMap(({ answer }) => answer.layouts).length;
		const rolls = made.cloths.flatMap((c) => c.rolls).filter((r) => r.answer.placed.length > 0);
		expect(drawings).toHaveLength(made.parts.length + made.blanks.length + sheets + rolls.length);
		const files = machineFiles(made).map((f) => f.name.toLowerCase());
		expect(new Set(files).size).toBe(files.length);
		expect(files).toHaveLength(drawings.length === 0 ? 0 : 2 * drawings.length + 1);
	});

	test('another reader finds every line of it, to the grid', () => {
		for (const drawing of drawings) expectAllOf(drawing);
	});

	test('the planner’s own reader takes from both files the outline of the part or the blank', () => {
		const things = [...made.parts, ...made.blanks];
		things.forEach((thing, i) => {
			const drawing = drawings[i]!;
			const own = tidy(thing.outline ?? rectangle(0, 0, thing.length, thing.width)).outline;
			const asked = { unit: 'file', scale: 1, known: null, join: 0 } as const;
			const outlineOf = (file: object): Outline =>
				importShape({ ...asked, ...file } as Parameters<typeof importShape>[0], MM).outline ?? [];
			const dxf = outlineOf({ kind: 'dxf', text: writeDxf(drawing), layer: 'CUT_OUTSIDE' });
			const svg = outlineOf({ kind: 'svg', text: writeSvg(drawing) });
			expect(cornersOf(dxf), drawing.name).toEqual(cornersOf(own));
			expect(area(dxf)).toBeCloseTo(area(own), -2);
			expect(svg.map(({ x, y }) => `${x} ${y}`).sort(), drawing.name).toEqual(
				own.map(({ x, y }) => `${x} ${y}`).sort(),
			);
			expect(Math.abs(area(svg) / area(own) - 1)).toBeLessThan(1e-6);
			expect(svg.filter((c) => c.bulge).length).toBe(own.filter((c) => c.bulge).length);
		});
	});

	test('holes and what is cut into the faces: all of the part, on their layers', () => {
		made.parts.forEach((part, i) => {
			const on = (layer: string) => drawings[i]!.lines.filter((l) => l.layer === layer).length;
			expect(on('CUT_OUTSIDE')).toBe(1);
			expect(on('CUT_INSIDE')).toBe(part.holes.length);
			const work = part.faceWork ?? [];
			const kinds = ['groove', 'pocket', 'rabbet', 'drill'] as const;
			for (const kind of kinds)
				for (const [from, end] of [
					['near', ''],
					['far', '_FAR'],
				] as const)
					expect(on(`${kind.toUpperCase()}${end}`), `${part.label} ${kind}`).toBe(
						work.filter((w) => w.kind === kind && w.from === from).length,
					);
		});
	});

	test('grooves, screws and clips of a panel are on its boards, each once for each hand', () => {
		for (const panel of made.panels.filter((p) => p.detail)) {
			const { groove, fixings, drills, both, label, covers, hinges } = panel.detail!;
			const hands = both ? 2 : 1;
			const boards = panel.parts.filter((p) => /\.board(-\d+)?(-[LR])?$/.test(p.id));
			const work = boards.flatMap((p) => p.faceWork ?? []);
			const long = work
				.filter((w) => w.kind === 'groove')
				.flatMap(({ line }) => line.slice(1).map((p, i) => [line[i]!, p] as const))
				.reduce((sum, [a, b]) => sum + Math.hypot(a.x - b.x, a.y - b.y), 0);
			// At a hinge there is nothing to cut it into: its gap, from edge to edge.
			const missing = hands * (groove?.length ?? 0) - long;
			const parted = hinges.reduce((sum, { gap }) => sum + 2 * gap, 0);
			expect(missing, label).toBeGreaterThan(-50);
			expect(missing, label).toBeLessThan(hands * parted + 50);
			const drilled = work.filter((w) => w.kind === 'drill').length;
			expect(drilled, label).toBe(hands * ((fixings?.at.length ?? 0) + drills.length));
			const magnets = panel.parts
				.flatMap((p) => p.faceWork ?? [])
				.filter((w) => w.name === 'magnet').length;
			const asked = covers.flatMap((c) => (c.magnet === null ? [] : c.magnets)).length;
			expect(magnets, label).toBe(2 * hands * asked);
		}
	});

	test('recesses and rabbets of a box are on its parts, with what they are deep', () => {
		for (const box of made.boxes)
			for (const board of box.figures?.boards ?? []) {
				const work = box.parts.find((p) => p.id === board.part)?.faceWork ?? [];
				const recesses = board.holes.flatMap(({ recess }) => recess ?? []);
				const pockets = work.filter((w) => w.kind === 'pocket').map((w) => w.depth);
				expect(pockets, board.label).toEqual(recesses);
				expect(work.filter((w) => w.kind === 'rabbet')).toHaveLength(board.rabbets.length);
			}
	});

	test('on a sheet or a roll all lies within its edge, and every piece is there once', () => {
		for (const { name: of, lines } of drawings.filter((d) => /^(sheet|roll)-/.test(d.name))) {
			const [edge] = lines;
			expect(edge?.layer, of).toBe('STOCK');
			const [, , far] = edge!.line;
			for (const { line } of lines)
				for (const p of line) {
					expect(Math.min(p.x, p.y)).toBeGreaterThanOrEqual(0);
					expect(p.x).toBeLessThanOrEqual(far!.x);
					expect(p.y).toBeLessThanOrEqual(far!.y);
				}
		}
		const whole = drawings.filter((d) => /^(sheet|roll)-/.test(d.name));
		const outsides = whole.flatMap(({ lines }) => lines).filter((l) => l.layer === 'CUT_OUTSIDE');
		const sheets = made.boards.flatMap(({ answer }) => answer.layouts);
		const rolls = made.cloths.flatMap((c) => c.rolls).map((r) => r.answer);
		expect(outsides).toHaveLength([...sheets, ...rolls].flatMap((l) => l.placed).length);
	});
});

const cornersOf = (outline: Outline): string[] =>
	outline.map(({ x, y, bulge = 0 }) => `${x} ${y} ${bulge.toFixed(9)}`).sort();

describe('what is cut into the faces of a pair', () => {
	test('the right one is the mirror image of the left one, its grooves too', async () => {
		const text = readFileSync(new URL('panel-quarter-pair.json', JOBS), 'utf8');
		const { parts } = await plan(JSON.parse(text), { effort: 1 });
		const left = parts.find((p) => p.label === 'P1L')!;
		const right = parts.find((p) => p.label === 'P1R')!;
		const spots = (of: typeof left, turn: (x: number) => number) =>
			(of.faceWork ?? [])
				.flatMap((w) => w.line.map((p) => `${w.kind} ${w.from} ${turn(p.x)} ${p.y}`))
				.sort();
		expect(spots(left, (x) => x).length).toBeGreaterThan(20);
		expect(spots(right, (x) => right.length - x)).toEqual(spots(left, (x) => x));
	});
});

test('the files come as one that any program opens: names, sizes, sums, and nothing of the clock', () => {
	const entries = [
		{ name: 'a.txt', data: '123456789' },
		{ name: 'Łapa.bin', data: Uint8Array.from([0, 255, 7]) },
		{ name: 'empty', data: '' },
	];
	const zip = zipped(entries);
	expect(zipped(entries)).toEqual(zip);
	const view = new DataView(zip.buffer);
	const end = zip.length - 22;
	expect(view.getUint32(end, true)).toBe(0x06054b50);
	expect([view.getUint16(end + 8, true), view.getUint16(end + 10, true)]).toEqual([3, 3]);
	let at = view.getUint32(end + 16, true);
	const found = entries.map(() => {
		expect(view.getUint32(at, true)).toBe(0x02014b50);
		const [sum, size, name] = [16, 24, 28].map((o) =>
			o === 28 ? view.getUint16(at + o, true) : view.getUint32(at + o, true),
		) as [number, number, number];
		const local = view.getUint32(at + 42, true);
		expect(view.getUint32(local, true)).toBe(0x04034b50);
		const from = local + 30 + view.getUint16(local + 26, true);
		const told = new TextDecoder().decode(zip.subarray(at + 46, at + 46 + name));
		at += 46 + name;
		return { name: told, sum, data: zip.slice(from, from + size) };
	});
	expect(at).toBe(end);
	expect(found.map((f) => f.name)).toEqual(['a.txt', 'Łapa.bin', 'empty']);
	// The check value of this sum for these nine digits, as its catalogues give it.
	expect(found[0]?.sum).toBe(0xcbf43926);
	expect(found[1]?.data).toEqual(Uint8Array.from([0, 255, 7]));
	expect(found[2]?.sum).toBe(0);
});
