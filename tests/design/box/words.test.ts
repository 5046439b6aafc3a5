import fc from 'fast-check';
import { runs } from '../../depth';
import { describe, expect, it } from 'vitest';
import type { Chamber } from '../../../src/lib/design/box/box-plan';
import { leanText } from '../../../src/lib/print/box/tables';
import { volumeLines } from '../../../src/lib/print/wording/box/volume-lines';
import { CROSSED, figures, made, told, type Asked } from './make';

const plain: Asked = { shape: { kind: 'plain', width: 600, height: 400, depth: 350 } };
const MM = { unit: 'mm', fraction: 32, decimal: '.' } as const;
const driver = {
	cutout: { kind: 'round' as const, diameter: 232 },
	frame: 262,
	depth: 118,
	data: { fs: 33, qts: 0.42, vas: 44 },
};
describe('two wishes for one volume', () => {
	const asked = (qtc: number | null, litres: number | null): Asked => ({
		...plain,
		drivers: [driver],
		qtc,
		target: litres === null ? null : { litres, solve: 'width' },
	});

	it('says that the litres go first and what they make of the Qtc', () => {
		// 0.42 sqrt(1 + 44 / 60) = 0.553; Qtc 0.75 wants 44 / ((0.75 / 0.42)^2 - 1) = 20.1 L.
		const [words] = told(asked(0.75, 60), 'qtc');
		expect(words).toMatch(/60 L are wanted and a Qtc of 0\.75.*comes to 0\.55.*20\.1 L/);
	});

	it('counts the stuffing when it says what to ask for', () => {
		const words = told({ ...asked(0.75, 60), stuffing: { fill: 100, credit: 25 } }, 'qtc');
		expect(words[0]).toMatch(/Ask for 16\.08 L/);
	});

	it('is silent when they agree, or when only one is wished for', () => {
		expect(told(asked(0.55, 60), 'qtc')).toEqual([]);
		expect(told(asked(0.75, null), 'qtc')).toEqual([]);
		expect(told(asked(null, 60), 'qtc')).toEqual([]);
	});
});

describe('a form that cannot be made', () => {
	const target = { litres: 34, solve: 'width' as const };
	it('is not also told that no width of it gives the volume', () => {
		expect(made({ ...CROSSED, target }).problems.map((p) => p.path.slice(2).join('.'))).toEqual([
			'shape.corners',
		]);
		const drawing = { kind: 'svg' as const, text: 'M 0 0', unit: 'mm' as const };
		const empty = { ...CROSSED.shape, drawing } as Asked['shape'];
		expect(told({ shape: empty, target }, 'target')).toEqual([]);
		expect(told({ shape: empty, target }, 'shape.drawing').length).toBeGreaterThan(0);
	});

	it('is solved all the same where another size of it can be made', () => {
		const thin: Asked = { shape: { kind: 'plain', width: 30, height: 400, depth: 350 } };
		expect(figures({ ...thin, target }).chambers[0]!.net).toBeCloseTo(34, 1);
	});
});

describe('rods', () => {
	const braces = [{ kind: 'dowel' as const, diameter: 22, a: 150, b: 200 }];
	const volume = (Math.PI / 4) * 0.022 ** 2 * 0.564; // m3

	it('count in the mass of the box, as beech where the rack says nothing', () => {
		const f = figures({ ...plain, braces });
		expect(f.rods[0]!.mass).toBeCloseTo(720 * volume, 9);
		expect(f.mass - figures(plain).mass).toBeCloseTo(720 * volume, 9);
	});

	it('weigh what the rods on the rack weigh', () => {
		const rod = { id: 'r', name: 'Tube', kind: 'dowel' as const, pack: 1, density: 2700 };
		const stock = { materials: [{ id: 'ply-18', name: 'P', nominal: 18, measured: 18 }] };
		const f = figures({ ...plain, braces }, { stock: { ...stock, sundries: [rod] } });
		expect(f.rods[0]!.mass).toBeCloseTo(2700 * volume, 9);
	});
});

describe('what is said on paper', () => {
	it('the lining names its area, its thickness and its solid share', () => {
		const asked: Asked = { ...plain, lining: { thickness: 20, solid: 10 } };
		const line = figures(asked).chambers[0]!.deductions[0]!;
		// Every inside face: 564 x 364 x 314 inside.
		const area = 2 * (0.564 * 0.364 + 0.564 * 0.314 + 0.364 * 0.314);
		expect(line.what).toBe('Lining: 0.99 m², 20 mm thick, 10 % of it solid');
		expect(area).toBeCloseTo(0.99, 2);
		expect(line.litres).toBeCloseTo(area * 20 * 0.1, 9);
		const hole = { kind: 'rectangle' as const, width: 100, height: 50 };
		const cut = figures({ ...asked, terminal: { board: 'back', hole } }).chambers[0]!.deductions;
		expect(cut[0]!.litres).toBeCloseTo((area - 0.005) * 20 * 0.1, 9);
		expect(made({ ...asked, count: 3 }).needs.find((n) => n.kind === 'lining')!.amount).toBeCloseTo(
			3 * area,
			9,
		);
	});

	it('each chamber is lined by its own walls, the divider left bare', () => {
		const asked: Asked = {
			...plain,
			lining: { thickness: 20, solid: 10 },
			dividers: [{ at: 200 }],
		};
		const lines = figures(asked).chambers.map((c) => c.deductions[0]!.litres);
		const room = (width: number) => 2 * width * (0.364 + 0.314) + 0.364 * 0.314;
		expect(lines).toEqual([
			expect.closeTo(room(0.2) * 2, 9) as number,
			expect.closeTo(room(0.564 - 0.218) * 2, 9) as number,
		]);
	});

	it('leaning walls are lined as large as they are', () => {
		const wedge = {
			kind: 'tapered' as const,
			front: { width: 400, height: 300 },
			back: { width: 300, height: 200 },
			depth: 300,
		};
		const asked: Asked = { sizes: 'inner', shape: wedge, lining: { thickness: 10, solid: 100 } };
		// Trapezoids 400 and 300, 300 and 200 wide, as deep as the lean of 50 in 300 makes them;
		// front and back besides.
		const deep = Math.hypot(300, 50);
		const area = 2 * deep * (350 + 250) + 400 * 300 + 300 * 200;
		expect(figures(asked).chambers[0]!.deductions[0]!.litres).toBeCloseTo((area * 10) / 1e6, 6);
	});

	it('a brace beside an L-bent slot says why it stops short, and is not glued to that wall', () => {
		const f = figures({
			...plain,
			vents: [
				{ kind: 'slot', gap: 40, bend: 'L', goal: { by: 'length', length: 420 }, name: 'the slot' },
			],
			braces: [{ kind: 'window', across: 'width', at: 280 }],
		});
		const brace = f.boards.find((b) => b.role === 'brace')!;
		expect(brace.notes.join(' ')).toMatch(/58 mm short of the bottom.*58 mm short of the back/);
		const glued = f.seams.filter((s) => s.between[0] === brace.name).map((s) => s.between[1]);
		expect(glued.sort()).toEqual(['Front', 'Top']);
	});

	it('a board leans from upright, tilts from level, or from square to the width', () => {
		const wedge: Asked = {
			shape: {
				kind: 'tapered',
				front: { width: 500, height: 400 },
				back: { width: 400, height: 300 },
				depth: 300,
				rise: 0,
			},
		};
		const all = figures(wedge).leans.map((l) => leanText(l, MM));
		// 100 in 300 at the top, 50 in 300 at each side.
		expect(all).toEqual([
			'top tilts 18.4° from level',
			'left tilts 9.5° from square to the width',
			'right tilts 9.5° from square to the width',
		]);
	});
});

describe('the column of volumes', () => {
	const chamber = (gross: number, parts: readonly number[]): Chamber =>
		({
			gross,
			deductions: parts.map((litres, i) => ({ what: `part ${i}`, litres })),
			net: gross - parts.reduce((a, b) => a + b, 0),
		}) as unknown as Chamber;
	const number = (text: string): number => Math.round(parseFloat(text) * 1000);

	it('adds up as printed, no line off by more than a mark', () => {
		const litre = fc.double({ min: 0, max: 9, noNaN: true });
		const ruler = fc.constantFrom(MM, { unit: 'in', fraction: 32, decimal: '.' } as const);
		fc.assert(
			fc.property(litre, fc.array(litre, { maxLength: 8 }), ruler, (rest, parts, on) => {
				const c = chamber(rest + parts.reduce((a, b) => a + b, 0), parts);
				const lines = volumeLines(c, on);
				const printed = lines.deductions.map((d) => number(d.volume));
				expect(number(lines.gross) - printed.reduce((a, b) => a + b, 0)).toBe(number(lines.net));
				const mark = on.unit === 'in' ? 1 : 10;
				const per = on.unit === 'in' ? 28.316846592 : 1;
				printed.forEach((n, i) =>
					expect(Math.abs(n - (parts[i]! / per) * 1000)).toBeLessThan(1.01 * mark),
				);
			}),
			{ numRuns: runs(300) },
		);
	});

	it('says so when a line had to give way', () => {
		// 40.000 - 3.004 - 2.993 = 34.003; each alone prints 40.00, 3.00, 2.99 and 34.00, which do
		// not add up.
		const odd = volumeLines(chamber(40, [3.004, 2.993]), MM);
		expect(odd.deductions.map((d) => d.volume)).toEqual(['3.01 L', '2.99 L']);
		expect(odd.net).toBe('34.00 L');
		expect(odd.adjusted).toBe(true);
		expect(volumeLines(chamber(40, [3, 2.5]), MM).adjusted).toBe(false);
	});
});
