import { describe, expect, it } from 'vitest';
import { box } from '../../../src/lib/job/box/box';
import { made, told, type Asked } from './make';
import { dxfFile, polyline, section } from '../import/dxf-text';

const typed = [
	{ x: 0, y: 0 },
	{ x: 400, y: 0 },
	{ x: 300, y: 350 },
	{ x: 0, y: 350 },
];
const free = (drawing?: object): Asked =>
	({
		shape: { kind: 'free', width: 600, corners: typed, ...(drawing ? { drawing } : {}) },
	}) as Asked;
const svg = (d: string, more: object = {}): object => ({
	kind: 'svg',
	text: d,
	unit: 'mm',
	...more,
});

const dxf = (corners: Parameters<typeof polyline>): string =>
	dxfFile(section('ENTITIES', polyline(...corners)));
const side: [number, number][] = [
	[0, 0],
	[40, 0],
	[30, 35],
	[0, 35],
];

const drawingTold = (asked: Asked): string[] => told(asked, 'shape.drawing');
/** Front, back and length of every board; its number depends on where the drawing starts. */
const sizes = (asked: Asked): string[] =>
	made(asked)
		.parts.map((p) => `${p.length} x ${p.width}, ${p.bevels.length}`)
		.sort();

describe('a side profile out of a drawing', () => {
	it('an SVG path, y down, stands for the same corners typed in', () => {
		// As a drawing program stores it: the top of the box has the smaller y.
		const same = free(svg('M0 350 L400 350 L300 0 L0 0 Z'));
		expect(made(same).problems).toEqual([]);
		expect(sizes(same)).toEqual(sizes(free()));
	});

	it('a DXF polyline in centimetres, drawn clockwise, does too', () => {
		const text = dxf([...side].reverse());
		expect(sizes(free({ kind: 'dxf', text, unit: 'cm' }))).toEqual(sizes(free()));
		const small = dxf(side.map(([x, y]) => [x, y] as const));
		expect(sizes(free({ kind: 'dxf', text: small, unit: 'mm', scale: 10 }))).toEqual(sizes(free()));
	});

	it('needs no corners beside it, and corners are asked for where neither is given', () => {
		const drawing = svg('M0 350 L400 350 L300 0 L0 0 Z');
		const bare = { shape: { kind: 'free', width: 600, drawing } } as Asked;
		expect(made(bare).problems).toEqual([]);
		expect(sizes(bare)).toEqual(sizes(free()));
		const neither = made({ shape: { kind: 'free', width: 600 } });
		expect(neither.problems).toMatchObject([
			{ path: ['boxes', 0, 'shape', 'corners'], kind: 'stop' },
		]);
		expect(`${neither.problems[0]!.what} ${neither.problems[0]!.fix}`).toMatch(
			/three corners; none.*drawing/,
		);
	});

	it('is still solved for its volume', () => {
		const asked = {
			...free(svg('M0 350 L400 350 L300 0 L0 0 Z')),
			target: { litres: 60, solve: 'width' as const },
		};
		expect(made(asked).figures!.chambers[0]!.net).toBeCloseTo(60, 1);
	});

	it('refuses curves and too many edges in words, and says what does not measure up', () => {
		expect(
			drawingTold(
				free({
					kind: 'dxf',
					unit: 'cm',
					text: dxf([
						[0, 0],
						[40, 0, 0.4],
						[30, 35],
						[0, 35],
					]),
				}),
			)[0],
		).toMatch(/^stop: One edge of the drawing is curved/);
		const star = Array.from({ length: 30 }, (_, i) => {
			const r = i % 2 ? 300 : 400;
			return `${r * Math.cos((i * Math.PI) / 15)} ${r * Math.sin((i * Math.PI) / 15)}`;
		});
		expect(drawingTold(free(svg(`M${star.join(' L')} Z`)))[0]).toMatch(
			/^stop: The drawing has 30 edges/,
		);
		expect(drawingTold(free(svg('this is no drawing'))).join(' ')).toContain('stop: ');
		const wrong = svg('M0 350 L400 350 L300 0 L0 0 Z', { known: { of: 'length', is: 500 } });
		expect(drawingTold(free(wrong)).join(' ')).toMatch(/400 mm.*500 mm|500 mm.*400 mm/);
	});

	it('a box written before drawings could be given reads as it did', () => {
		const old = {
			id: 'b',
			name: 'B',
			material: 'ply',
			shape: { kind: 'free', width: 600, corners: typed },
		};
		expect(box.parse(old).shape).toMatchObject({ kind: 'free', drawing: null });
	});
});
