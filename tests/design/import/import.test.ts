import { describe, expect, test } from 'vitest';
import { runs } from '../../depth';
import { stepsOf } from '../../steps';
import fc from 'fast-check';
import { drawShape } from '../../../src/lib/design/panel/fit/draw-shape';
import type { Drawn, Undrawn } from '../../../src/lib/design/shape/drawn';
import { area, bounds, perimeter } from '../../../src/lib/geometry/extent';
import { outlineShape } from '../../../src/lib/job/panel/outline';
import { alongEdge, edgesOf } from '../../../src/lib/geometry/edge';
import { expectReadOrRefused, said, sizes } from '../panel/drawn-figures';
import { dxfFile, entity, polyline, section, type Pair } from './dxf-text';

const MM = { unit: 'mm', fraction: 32, decimal: '.' } as const;

const drawing = (file: unknown): Drawn | Undrawn => drawShape(outlineShape.parse(file), MM);
const svg = (text: string, more: object = {}): Drawn | Undrawn =>
	drawing({ kind: 'svg', text, unit: 'mm', ...more });
const dxf = (entities: Pair[], more: object = {}, unit = 4): Drawn | Undrawn =>
	drawing({
		kind: 'dxf',
		unit: 'mm',
		text: dxfFile(section('HEADER', [9, '$INSUNITS', 70, unit]), section('ENTITIES', entities)),
		...more,
	});
const line = (x0: number, y0: number, x1: number, y1: number): Pair[] =>
	entity('LINE', 10, x0, 20, y0, 11, x1, 21, y1);

describe('SVG', () => {
	test('path data alone, curves kept as arcs', () => {
		const d = svg('M0 0 H100 A20 20 0 0 1 120 20 V80 H0 Z');
		expect(sizes(d)).toEqual({
			length: 120,
			width: 80,
			area: expect.closeTo(9600 - 400 + Math.PI * 100, 2) as number,
		});
		expect(d.outline!.filter((c) => c.bulge)).toHaveLength(1);
	});

	test('a file with groups, transforms and shapes: the largest closed outline, the rest told', () => {
		const d = svg(
			`<?xml version="1.0"?><!-- a > b --><svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 500 500" width="500mm">
			<g transform="translate(10 20) rotate(90)"><rect width="200" height="100" rx="10"/></g>
			<circle cx="50" cy="50" r="20"/><line x1="0" y1="0" x2="3" y2="3"/></svg>`,
		);
		expect(sizes(d).length).toBe(100);
		expect(sizes(d).width).toBe(200);
		expect(sizes(d).area).toBeCloseTo(20000 - (4 - Math.PI) * 100, 2);
		expect(said(d)).toContain('1 smaller outline and 1 open line beside it left out');
	});

	test('ellipses and Bézier curves are followed to 0.02 mm', () => {
		const d = svg('<svg><ellipse cx="0" cy="0" rx="200" ry="80" transform="rotate(90)"/></svg>');
		expect(sizes(d).width).toBeCloseTo(400, 1);
		for (const e of edgesOf(d.outline!)) {
			const p = alongEdge(e, 0.3);
			const [u, v] = [p.x / 1600 / 80 - 1, p.y / 1600 / 200 - 1];
			// Off the ellipse by less than 0.02 mm, where its normal is steepest.
			expect(Math.abs(Math.hypot(u, v) - 1)).toBeLessThan(0.021 / 80);
		}
		// A quarter circle as the usual cubic is off by 0.027 % of its radius.
		const k = 55.228;
		const quarter = svg(`M0 100 C0 ${100 - k} ${100 - k} 0 100 0 L100 100 Z`);
		expect(sizes(quarter).area).toBeCloseTo((Math.PI * 10000) / 4, -1);
		expect(quarter.outline!.length).toBeLessThan(12);
	});

	test('scripts, pictures and references are left out, told and never run', () => {
		const d = svg(
			`<svg onload="globalThis.hacked = 1"><script>globalThis.hacked = 1</script><image href="https://example.invalid/a.png"/>
			<use href="https://example.invalid/x.svg#a"/><path d="M0 0h100v50H0z"/></svg>`,
		);
		expect(sizes(d).area).toBe(5000);
		expect(said(d)).toContain('script');
		expect(said(d)).toContain('nothing was fetched');
		expect('hacked' in globalThis).toBe(false);
	});

	test('the size the file states is held against the unit chosen', () => {
		const file = '<svg width="100mm" viewBox="0 0 377.95 10"><path d="M0 0h300v100h-300z"/></svg>';
		expect(said(svg(file))).toContain('one unit is 0.2646 mm');
		expect(svg(file, { unit: 'px' }).complaints).toEqual([]);
		expect(sizes(svg(file, { unit: 'px' })).length).toBeCloseTo(79.375, 2);
	});

	test('a known length finds the wrong unit', () => {
		const d = svg('M0 0h12v6h-12z', { unit: 'mm', known: { of: 'length', is: '12 in' } });
		expect(said(d)).toContain('The drawing seems to be in inches.');
		expect(
			svg('M0 0h12v6h-12z', { unit: 'in', known: { of: 'length', is: '12 in' } }).complaints,
		).toEqual([]);
	});

	test('no SVG, an empty one, an open one and a broken path are refused in words', () => {
		expect(said(svg('<html></html>'))).toContain('no SVG');
		expect(said(svg('<svg></svg>'))).toContain('no line');
		const open = said(svg('M0 0h10v10'));
		expect(open).toContain('No outline in the drawing is closed');
		expect(open).toContain('a gap of 14.1 mm from 0, 0 to 10, 10 in the drawing');
		expect(said(svg('M0 0h100v100h-100z M0 0 L oops'))).toContain('breaks off');
	});
});

describe('DXF', () => {
	test('lines in any order and direction are chained, gaps closed and told', () => {
		const d = dxf(
			[
				line(0, 0, 200, 0),
				line(0, 100, 0, 0.1),
				line(200, 100, 200, 0),
				line(200, 100, 0, 100),
			].flat(),
		);
		expect(sizes(d)).toEqual({ length: 200, width: 100, area: 20000 });
		expect(said(d)).toContain('one gap between loose ends closed');
	});

	test('polylines with bulges, old and new, arcs, circles and ellipses', () => {
		const slot = polyline([0, 0], [100, 0, 1], [100, 40], [0, 40, 1]);
		expect(sizes(dxf(slot))).toEqual({
			length: 140,
			width: 40,
			area: expect.closeTo(4000 + Math.PI * 400, 3) as number,
		});
		const v = (x: number, y: number, b: number): Pair[] => entity('VERTEX', 10, x, 20, y, 42, b);
		const old = [
			entity('POLYLINE', 66, 1, 70, 1),
			v(0, 0, 0),
			v(100, 0, 1),
			v(100, 40, 0),
			v(0, 40, 1),
			entity('SEQEND'),
		];
		expect(sizes(dxf(old.flat())).area).toBeCloseTo(4000 + Math.PI * 400, 3);
		expect(sizes(dxf(entity('CIRCLE', 10, 5, 20, 5, 40, 50))).area).toBeCloseTo(Math.PI * 2500, 3);
		const half = [entity('ARC', 10, 0, 20, 0, 40, 50, 50, 0, 51, 180), line(-50, 0, 50, 0)];
		expect(sizes(dxf(half.flat())).area).toBeCloseTo((Math.PI * 2500) / 2, 2);
		const oval = entity('ELLIPSE', 10, 0, 20, 0, 11, 100, 21, 0, 40, 0.5, 41, 0, 42, 2 * Math.PI);
		expect(sizes(dxf(oval)).area).toBeCloseTo(Math.PI * 5000, -1);
	});

	test('a spline with weights that is a circle is one', () => {
		const w = Math.SQRT1_2;
		const ring = [
			[1, 0, 1],
			[1, 1, w],
			[0, 1, 1],
			[-1, 1, w],
			[-1, 0, 1],
			[-1, -1, w],
			[0, -1, 1],
			[1, -1, w],
			[1, 0, 1],
		];
		const knots = [0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4];
		const d = dxf(
			entity(
				'SPLINE',
				71,
				2,
				...knots.flatMap((k) => [40, k]),
				...ring.flatMap(([x, y, q]) => [10, x! * 50, 20, y! * 50, 41, q!]),
			),
		);
		expect(sizes(d).area).toBeCloseTo(Math.PI * 2500, 2);
		expect(perimeter(d.outline!) / 1600).toBeCloseTo(Math.PI * 100, 2);
		expect(d.outline!.length).toBeLessThanOrEqual(8);
	});

	test('a turned-over plane is mirrored back', () => {
		const d = dxf(
			entity('LWPOLYLINE', 70, 1, 10, 0, 20, 0, 10, 100, 20, 0, 10, 0, 20, 50, 230, -1),
		);
		// Turned over, the right angle lies at the lower right.
		expect(d.outline!.filter((c) => c.x === bounds(d.outline!).length)).toHaveLength(2);
	});

	test('an outline with gaps names each, as the drawing counts and in millimetres', () => {
		const open = dxf(
			[line(0, 0, 20, 0), line(20.05, 0, 20, 10), line(20, 10, 0, 10), line(0, 10, 0, 0.03)].flat(),
			{ unit: 'cm' },
			5,
		);
		expect(open.outline).toBeNull();
		expect(said(open)).toContain('2 lines end loose: a gap of 0.3 mm from 0, 0 to 0, 0.03 in');
		expect(said(dxf([line(0, 0, 20, 0), line(20, 0, 20, 10)].flat()))).toContain(
			'a gap of 22.4 mm from 0, 0 to 20, 10',
		);
		const two = dxf([line(0, 0, 90, 0), line(90.5, 0, 90, 50), line(90, 50, 0, 50)].flat());
		expect(said(two)).toContain('2 lines end loose');
		expect(said(two)).toContain('a gap of 0.5 mm from 90, 0 to 90.5, 0');
		expect(said(two)).toContain('a gap of 50 mm from 0, 0 to 0, 50');
		// Beside a closed outline as well: the open one may be the one that was meant.
		const beside = svg('M0 0h10v10h-10z M0 100 h300 v200 h-300 v-190');
		expect(said(beside)).toContain(
			'1 open line beside it left out (a gap of 10 mm from 0, 110 to 0, 100',
		);
	});

	test('layers switched off or frozen are left out and named, and taken where they are asked for', () => {
		const on = (layer: string, [start, type, code, , ...rest]: Pair[]): Pair[] => [
			...[start!, type!, code!, layer],
			...rest,
		];
		const big = on('Notes', polyline([0, 0], [300, 0], [300, 200], [0, 200]));
		const small = on('Cut', polyline([0, 0], [100, 0], [100, 50], [0, 50]));
		const layers = (colour: number, flags: number): Pair[] => [
			...entity('LAYER', 2, 'NOTES', 70, flags, 62, colour),
			...entity('LAYER', 2, 'Cut', 70, 0, 62, 7),
		];
		const read = (colour: number, flags: number, layer = '') =>
			drawing({
				kind: 'dxf',
				unit: 'mm',
				layer,
				text: dxfFile(
					section('TABLES', layers(colour, flags)),
					section('ENTITIES', [...big, ...small]),
				),
			});
		expect(sizes(read(3, 0)).length).toBe(300);
		for (const [colour, flags] of [
			[-3, 0],
			[3, 1],
			[3, 5],
		] as const) {
			const d = read(colour, flags);
			expect(sizes(d).length).toBe(100);
			expect(d.complaints).toEqual([
				{
					kind: 'note',
					what: 'Left out, for it is switched off or frozen in the drawing: what lies on layer "Notes".',
					fix: 'Name the layer here to take the outline from it.',
				},
			]);
			expect(sizes(read(colour, flags, 'notes')).length).toBe(300);
			expect(read(colour, flags, 'notes').complaints).toEqual([]);
		}
	});

	test('a layer that is not there: those that are', () => {
		const two = ['Cut', 'cut', 'Fold'].flatMap((layer) => [
			0,
			'CIRCLE',
			8,
			layer,
			10,
			0,
			20,
			0,
			40,
			50,
		]);
		const d = dxf(two, { layer: 'Outline' });
		expect(d.outline).toBeNull();
		expect(said(d)).toContain('nothing on a layer "Outline"');
		expect(said(d)).toContain('Its layers are "Fold", "cut": name one of them');
		const many = Array.from({ length: 30 }, (_, i) => [
			0,
			'CIRCLE',
			8,
			`L${i}`,
			10,
			0,
			20,
			0,
			40,
			5,
		]);
		expect(said(dxf(many.flat() as Pair[], { layer: 'x' }))).toContain('and 10 more');
		expect(said(dxf([], { layer: 'x' }))).toContain('nothing on any layer');
	});

	test('the unit left to the file is taken from it, and asked for where it does not say', () => {
		expect(sizes(dxf(polyline([0, 0], [10, 0], [10, 5]), { unit: 'file' }, 1))).toMatchObject({
			length: 254,
			width: 127,
		});
		for (const silent of [0, 99]) {
			const d = dxf(polyline([0, 0], [10, 0], [10, 5]), { unit: 'file' }, silent);
			expect(d.outline).toBeNull();
			expect(said(d)).toContain('does not say how long one of its units is');
			expect(said(d)).toContain('about 10 by 5 of them');
		}
		const list = { kind: 'pasted', unit: 'file', text: '0 0\n10 0\n10 5' };
		expect(said(drawing(list))).toContain('Choose the unit');
	});

	test('layers, units of the file, blocks and binary files', () => {
		const two = [
			[0, 'CIRCLE', 8, 'outline', 10, 0, 20, 0, 40, 50],
			[0, 'CIRCLE', 8, 'Other', 10, 0, 20, 0, 40, 70],
		];
		expect(sizes(dxf(two.flat(), { layer: 'OUTLINE' })).length).toBe(100);
		expect(said(dxf(two[0]!, {}, 1))).toContain('inches');
		expect(said(dxf([...two[0]!, ...entity('INSERT', 2, 'door')]))).toContain(
			'not held by the file: door',
		);
		expect(said(drawing({ kind: 'dxf', unit: 'mm', text: 'a\0b' }))).toContain('binary');
		expect(said(drawing({ kind: 'dxf', unit: 'mm', text: 'hello' }))).toContain('no DXF');
	});

	test('fifty thousand entities are refused after a look at each line of the file, no more', () => {
		const many = Array.from({ length: 50_000 }, (_, i) => line(i, 0, i + 1, 0)).flat();
		const letters = dxfFile(section('ENTITIES', many)).length;
		let d = dxf(line(0, 0, 1, 0));
		const steps = stepsOf(() => (d = dxf(many)));
		expect(said(d)).toContain('too many');
		expect(steps / letters).toBeLessThan(2);
	});

	test('ten thousand loose lines are chained', () => {
		const n = 10_000;
		const at = (i: number): [number, number] => [
			400 * Math.cos((i / n) * 2 * Math.PI),
			300 * Math.sin((i / n) * 2 * Math.PI),
		];
		const mixed = Array.from({ length: n }, (_, i) => (i * 7919) % n);
		const d = dxf(
			mixed.flatMap((i) => line(...at(i), ...at((i + 1) % n))),
			{ join: 0.01 },
		);
		expect(sizes(d).area).toBeCloseTo(Math.PI * 400 * 300, -1.5);
	});
});

describe('pasted corners', () => {
	test('with commas, semicolons, headings and a decimal comma', () => {
		const d = drawing({
			kind: 'pasted',
			unit: 'cm',
			text: 'x;y\n0;0\n12,5;0\n12,5;8\n0;8\n0;0\n',
			decimal: ',',
		});
		expect(sizes(d)).toEqual({ length: 125, width: 80, area: 10000 });
		expect(said(drawing({ kind: 'pasted', unit: 'mm', text: '0,0\n10,0\n10;ten' }))).toContain(
			'Line 3',
		);
	});
});

describe('bad outlines', () => {
	const corners = (...p: [number, number][]): Drawn | Undrawn =>
		drawing({ kind: 'corners', corners: p.map(([x, y]) => ({ x, y })) });

	test('crossing itself, clockwise, doubled corners, a sliver, the wrong unit', () => {
		expect(said(corners([0, 0], [100, 100], [100, 0], [0, 80]))).toContain('crosses itself');
		// Lobes of equal size take each other's area away: still it crosses.
		const bow = corners([0, 0], [100, 100], [100, 0], [0, 100]);
		expect(said(bow)).toContain('The outline crosses itself: edge 1 meets edge 3 at 50 mm, 50 mm.');
		const drawnBow = 'M0 0 L300 200 V0 L0 200 z M0 0h20v20h-20z';
		expect(said(svg(drawnBow))).toContain('crosses itself');
		expect(said(dxf(polyline([0, 0], [100, 100], [100, 0], [0, 100])))).toContain('crosses itself');
		// A line there and back is no outline, whatever it is beside.
		expect(sizes(svg('M0 0 L300 300 L100 100 z M0 0h20v20h-20z')).length).toBe(20);
		const clockwise = corners([0, 0], [0, 50], [100, 50], [100, 0]);
		expect(area(clockwise.outline!)).toBeGreaterThan(0);
		expect((clockwise as Drawn).sides).toEqual([4, 3, 2, 1]);
		expect(said(corners([0, 0], [100, 0], [100, 0], [100, 50], [0, 50]))).toContain('given twice');
		expect(
			said(corners([0, 0], [100, 0], [100, 50], [50.005, 50], [50, 90], [49.998, 50], [0, 50])),
		).toContain('spike');
		expect(said(corners([0, 0], [6000, 0], [6000, 3000], [0, 3000]))).toContain('Check its unit');
		expect(said(corners([0, 0], [10, 10], [20, 20]))).toContain('no area');
	});
});

describe('whatever the file holds, it is read or refused in words', () => {
	const token = fc.constantFrom(
		'0',
		'2',
		'8',
		'10',
		'20',
		'11',
		'21',
		'40',
		'41',
		'42',
		'50',
		'51',
		'70',
		'71',
		'230',
		'1e400',
		'-1',
		'NaN',
		'',
		'SECTION',
		'ENDSEC',
		'EOF',
		'HEADER',
		'ENTITIES',
		'LINE',
		'ARC',
		'CIRCLE',
		'ELLIPSE',
		'SPLINE',
		'LWPOLYLINE',
		'POLYLINE',
		'VERTEX',
		'SEQEND',
		'INSERT',
		'BLOCKS',
		'BLOCK',
		'ENDBLK',
		'2',
		'41',
		'70',
		'__proto__',
		'$INSUNITS',
		'3.5',
		'1e9',
		'16',
	);
	const svgToken = fc.constantFrom(
		'<svg>',
		'</svg>',
		'<g transform="',
		'rotate(',
		'1e9',
		')',
		'">',
		'<path d="',
		'M0 0',
		'L10 10',
		'A',
		'5 5 0 1 1 9 9',
		'Z',
		'C',
		' 1 2 3 4',
		'"/>',
		'<rect width="5" height="',
		'-',
		'<![CDATA[',
		']]>',
		'<!--',
		'-->',
		'&x;',
		'<use href="#a"/>',
		'\0',
		'<',
		'>',
		'matrix(0 0 0 0 0 0)',
	);
	test('DXF tokens and bytes', () => {
		fc.assert(
			fc.property(fc.array(token, { maxLength: 60 }), (t) => {
				expectReadOrRefused(dxf(t));
				expectReadOrRefused(drawing({ kind: 'dxf', unit: 'in', text: `0\n${t.join('\n')}` }));
			}),
			{ numRuns: runs(300) },
		);
		fc.assert(
			fc.property(fc.string({ minLength: 1, maxLength: 300, unit: 'binary' }), (text) =>
				expectReadOrRefused(drawing({ kind: 'dxf', unit: 'mm', text })),
			),
			{ numRuns: runs(200) },
		);
	});

	test('SVG tokens and bytes', () => {
		fc.assert(
			fc.property(fc.array(svgToken, { minLength: 1, maxLength: 30 }), (t) => {
				expectReadOrRefused(svg(`<svg>${t.join('')}</svg>`));
				expectReadOrRefused(svg(t.join('')));
			}),
			{ numRuns: runs(300) },
		);
		fc.assert(
			fc.property(fc.string({ minLength: 1, maxLength: 300, unit: 'binary' }), (text) =>
				expectReadOrRefused(svg(text)),
			),
			{ numRuns: runs(200) },
		);
	});

	test('pasted text and traced clicks', () => {
		fc.assert(
			fc.property(fc.string({ minLength: 1, maxLength: 200 }), (text) =>
				expectReadOrRefused(drawing({ kind: 'pasted', unit: 'mm', text })),
			),
			{ numRuns: runs(200) },
		);
		const px = fc.record({
			x: fc.integer({ min: -5, max: 4000 }),
			y: fc.integer({ min: -5, max: 3000 }),
		});
		fc.assert(
			fc.property(
				fc.tuple(px, px, px, px),
				fc.array(px, { minLength: 3, maxLength: 8 }),
				(sheet, points) =>
					expectReadOrRefused(drawing({ kind: 'traced', paper: 'a4', sheet, points })),
			),
			{ numRuns: runs(300) },
		);
	});
});

describe('an exact quarter turn opens no gap', () => {
	const whole = (d: Drawn | Undrawn): void => {
		expect(d.outline).not.toBeNull();
		expect(said(d)).not.toContain('gap');
	};
	const [w, h] = [300.7, 200.3];

	test.each([90, -270, 450, 180, 270])('in SVG, one half turned by %i degrees', (degrees) => {
		const back = { 90: [h, -w, h, 0], 180: [-w, -h, 0, -h], 270: [-h, w, -h, 0] } as const;
		const [x0, y0, x1, y1] = back[(((degrees % 360) + 360) % 360) as 90];
		const half = `<path d="M${x0} ${y0} L${x1} ${y1} L0 0" transform="rotate(${degrees})"/>`;
		whole(svg(`<svg><path d="M0 0 H${w} V${h}"/>${half}</svg>`));
	});

	test.each([
		[0, 90],
		[90, 180],
		[180, 270],
		[270, 360],
		[-90, 0],
	])('in DXF, an arc from %i to %i degrees between two lines', (from, to) => {
		const end = (degrees: number): [number, number] => {
			const ends = [[w, 0] as const, [0, w] as const, [-w, 0] as const, [0, -w] as const];
			const [x, y] = ends[(((degrees / 90) % 4) + 4) % 4]!;
			return [x, y];
		};
		const arc = entity('ARC', 10, 0, 20, 0, 40, w, 50, from, 51, to);
		whole(dxf([...line(0, 0, ...end(from)), ...arc, ...line(...end(to), 0, 0)]));
	});

	test.each([90, 180, 270])('in DXF, a block put in turned by %i degrees', (degrees) => {
		const lines = { 90: [h, -w, h, 0], 180: [-w, -h, 0, -h], 270: [-h, w, -h, 0] } as const;
		const [x0, y0, x1, y1] = lines[degrees as 90];
		const block = [...line(x0, y0, x1, y1), ...line(x1, y1, 0, 0)];
		const insert = entity('INSERT', 2, 'B', 10, 0, 20, 0, 50, degrees);
		const text = dxfFile(
			section('BLOCKS', [0, 'BLOCK', 2, 'B', 10, 0, 20, 0, ...block, 0, 'ENDBLK']),
			section('ENTITIES', [...line(0, 0, w, 0), ...line(w, 0, w, h), ...insert]),
		);
		whole(drawing({ kind: 'dxf', unit: 'mm', text }));
	});
});
