import { describe, expect, test } from 'vitest';
import { drawShape } from '../../../src/lib/design/panel/fit/draw-shape';
import type { Drawn, Undrawn } from '../../../src/lib/design/shape/drawn';
import { outlineShape } from '../../../src/lib/job/panel/outline';
import { said, sizes } from '../panel/drawn-figures';
import { dxfFile, entity, type Pair, section } from './dxf-text';

/* Where things come to lie that a drawing moves, turns and repeats, and how much of it is read. */

const drawn = (kind: 'svg' | 'dxf', text: string, more: object = {}): Drawn | Undrawn =>
	drawShape(outlineShape.parse({ kind, text, unit: 'mm', ...more }), MM);
const MM = { unit: 'mm', fraction: 32, decimal: '.' } as const;

const line = (x: number, y: number, u: number, v: number): Pair[] =>
	entity('LINE', ...[10, x, 20, y, 11, u, 21, v]);
/** A block of one line, inserted with these pairs, and lines that close an outline with it. */
const withBlock = (own: Pair[], insert: Pair[], ...lines: Pair[][]) =>
	dxfFile(
		section('BLOCKS', [...[0, 'BLOCK', 2, 'B', 10, 0, 20, 0], ...own, ...[0, 'ENDBLK']]),
		section('ENTITIES', [...entity('INSERT', 2, 'B', ...insert), ...lines.flat()]),
	);

describe('copies of a block in rows and columns', () => {
	test('rows of a block turned by 90 degrees go to the left', () => {
		// The line points up; its second copy lies 60 to the left of it.
		const insert = [10, 7, 20, 5, 50, 90, 71, 2, 45, 60];
		const text = withBlock(line(0, 0, 100, 0), insert, line(7, 5, -53, 5), line(7, 105, -53, 105));
		const d = drawn('dxf', text);
		expect(sizes(d)).toEqual({ length: 60, width: 100, area: 6000 });
	});

	test('columns of it go up', () => {
		const insert = [10, 7, 20, 5, 50, 90, 70, 2, 44, 100];
		const text = withBlock(line(0, 0, 0, 60), insert, line(7, 5, 7, 105), line(-53, 5, -53, 105));
		const d = drawn('dxf', text);
		expect(sizes(d)).toEqual({ length: 60, width: 100, area: 6000 });
	});

	test('at an angle of their own: a rhombus of 3, 4, 5', () => {
		// Turned by atan(3/4): along (4, 3) / 5, across (-3, 4) / 5.
		const turn = (Math.atan2(3, 4) * 180) / Math.PI;
		const insert = [10, 0, 20, 0, 50, turn, 71, 2, 45, 50];
		const text = withBlock(line(0, 0, 100, 0), insert, line(0, 0, -30, 40), line(80, 60, 50, 100));
		const d = drawn('dxf', text);
		expect(sizes(d).area).toBeCloseTo(100 * 50, 1);
	});
});

describe('units of a drawing', () => {
	// DXF reference, header variable $INSUNITS.
	test.each([
		[1, 25.4],
		[2, 304.8],
		[4, 1],
		[5, 10],
		[6, 1000],
		[14, 100],
	])('%i', (code, mm) => {
		const lines = [line(0, 0, 3, 0), line(3, 0, 3, 2), line(3, 2, 0, 2), line(0, 2, 0, 0)];
		const header = section('HEADER', [9, '$INSUNITS', 70, code]);
		const text = dxfFile(header, section('ENTITIES', lines.flat()));
		const { length, width } = sizes(drawn('dxf', text, { unit: 'file' }));
		expect([length, width]).toEqual([expect.closeTo(3 * mm, 2), expect.closeTo(2 * mm, 2)]);
	});
});

describe('transforms of a drawing', () => {
	const moved = (transform: string, rest: string) =>
		drawn(
			'svg',
			`<svg><g transform="${transform}"><path d="M0 0H100"/></g><path d="${rest}"/></svg>`,
		);

	// SVG 1.1, 7.6: rotate(a) turns about the origin, rotate(a x y) about a point.
	test.each([
		['rotate(90)', 'M0 0H60V100H0'],
		['rotate(90 0 0)', 'M0 0H60V100H0'],
		['rotate(90 10 20)', 'M30 10H90V110H30'],
		['translate(5)', 'M5 0V60H105V0'],
		['translate(5 7)', 'M5 7V67H105V7'],
	])('%s', (transform, rest) => {
		const d = moved(transform, rest);
		expect(sizes(d).area).toBeCloseTo(6000, 6);
	});
});

describe('transforms that lean a drawing', () => {
	// SVG 1.1, 7.6: skewX(a) takes x to x + y tan a, skewY(a) takes y to y + x tan a.
	test.each([
		['skewX(45)', 'M10 10V60H110V10'],
		['skewY(45)', 'M0 10V60L100 160V110'],
	])('%s', (transform, rest) => {
		const text = `<svg><g transform="${transform}"><path d="M0 10H100"/></g><path d="${rest}"/></svg>`;
		expect(sizes(drawn('svg', text)).area).toBeCloseTo(5000, 6);
	});
});

describe('a curve given only by the points it passes through', () => {
	test('is taken, and said to be uncertain, with what would be exact', () => {
		// Seven points of a circle of radius 500.
		const arc = [0, 1, 2, 3, 4, 5, 6].map((k) => (k - 3) * 0.03);
		const [long, high] = [500 * Math.sin(0.09), 500 * Math.cos(0.09)];
		const fit = arc.flatMap((a) => [11, long + 500 * Math.sin(a), 21, 500 * Math.cos(a) - high]);
		const spline = entity('SPLINE', ...[70, 8, 71, 3, 72, 0, 73, 0, 74, 7], ...fit);
		const [x, y] = [2 * long, -60];
		const lines = [line(x, 0, x, y), line(x, y, 0, y), line(0, y, 0, 0)];
		const d = drawn('dxf', dxfFile(section('ENTITIES', [...spline, ...lines.flat()])));
		expect(said(d)).toMatch(/^1 curve given only by points they pass through/i);
		expect(said(d)).toContain('control points, arcs or polylines it would be exact.');
		expect(sizes(d).width).toBeCloseTo(60 + 500 - high, 1);
	});
});

describe('curves', () => {
	test.each([10, 0.1])('are followed as closely whatever the scale: %f', (scale) => {
		const bow = (by: number) =>
			`M0 0C0 ${60 * by} ${100 * by} ${60 * by} ${100 * by} 0L${100 * by} ${-80 * by}L0 ${-80 * by}Z`;
		const plain = drawn('svg', bow(5));
		const scaled = drawn('svg', bow(5 / scale), { scale });
		expect(scaled.outline).toHaveLength(plain.outline!.length);
		expect(sizes(scaled).area).toBeCloseTo(sizes(plain).area, 0);
	});
});

describe('drawings too large to be an outline', () => {
	test('an SVG of more than three megabytes', () => {
		const long = (length: number) => drawn('svg', '<svg>'.padEnd(length, ' ') + '</svg>');
		expect(said(long(3_000_000))).toContain('larger than 3 MB');
		expect(said(long(3_000_000))).toContain('Save the outline alone.');
		expect(said(long(2_999_994))).not.toContain('larger than 3 MB');
	});

	test('a DXF of more than 40,000 entities', () => {
		const many = (n: number) =>
			drawn(
				'dxf',
				dxfFile(section('ENTITIES', Array.from({ length: n }, () => entity('POINT')).flat())),
			);
		expect(said(many(40_001))).toContain('more than 40000 entities');
	});
});
