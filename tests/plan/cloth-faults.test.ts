import { describe, expect, it } from 'vitest';
import { plan } from '../../src/lib/plan';

const job = (cloth: object, roll: object = {}) => ({
	version: 1,
	stock: {
		materials: [{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12 }],
		sheets: [{ id: 's', material: 'ply', length: 2440, width: 1220, price: 50 }],
		cloths: [{ id: 'carpet', name: 'Carpet', loose: 4, pressed: 3, ...cloth }],
		rolls: [{ id: 'r', cloth: 'carpet', width: 1500, usable: 1450, price: 9, ...roll }],
	},
	panels: [
		{
			id: 'p',
			name: 'Panel',
			opening: { kind: 'rectangle', length: 600, width: 400 },
			material: 'ply',
			cloth: 'carpet',
		},
	],
});
const made = async (cloth: object, roll: object = {}) => {
	const { problems, parts, blanks } = await plan(job(cloth, roll), { effort: 5 });
	const trouble = problems.filter((p) => p.kind !== 'note');
	return {
		said: trouble.map((p) => `${p.kind} ${p.path.join('.')}`),
		boards: parts.map((p) => p.length / 1600),
		blanks: blanks.length,
	};
};

describe('a fault in a cloth', () => {
	it('is said once, keeps the board of the panel, and nothing is cut from the cloth', async () => {
		expect(await made({})).toEqual({ said: [], boards: [593], blanks: 1 });
		for (const bad of [{ shrink: 'x' }, { nap: 'up' }, { relief: 9 }, { repeat: -1 }])
			expect(await made(bad)).toEqual({
				said: [`stop stock.cloths.0.${Object.keys(bad)[0]!}`],
				boards: [593],
				blanks: 0,
			});
	});

	it('that decides the size of the board takes the panel along, and is said once', async () => {
		expect(await made({ pressed: 'x' })).toEqual({
			said: ['stop stock.cloths.0.pressed'],
			boards: [],
			blanks: 0,
		});
	});

	/** What is made of a panel whose cloth has a thickness that cannot be read. */
	const stands = async (cloth: object, panel: object) => {
		const file = job(cloth);
		const panels = [{ ...file.panels[0], ...panel }];
		const made = await plan({ ...file, panels }, { effort: 5 });
		return {
			stops: made.problems.filter((p) => p.kind === 'stop').map((p) => p.path.join('.')),
			checks: made.problems.filter((p) => p.kind === 'check').map((p) => p.what),
			parts: made.parts.map((p) => [p.name, p.length / 1600]),
			notes: made.problems
				.filter((p) => p.kind === 'note' && p.path[0] !== 'stock')
				.map((p) => p.what),
			drawn: made.panels[0]?.detail !== undefined,
			blanks: made.blanks.length,
		};
	};
	const at = (x: number, y: number, length: number, width: number) => ({
		shape: { kind: 'rectangle', length, width },
		x,
		y,
	});

	it('keeps the parts that hang on no thickness, and names those left out', async () => {
		const layers = [
			{ id: 'step', name: 'Step', outline: at(60, 60, 200, 100), material: 'ply' },
			{ id: 'pit', name: 'Pit', place: 'recessed', outline: at(350, 60, 90, 90), material: 'ply' },
		];
		const covers = [
			{
				...{ id: 'hatch', name: 'Hatch', outline: at(350, 200, 100, 100) },
				...{ ledge: { material: 'ply' }, lift: { by: 'magnets', diameter: 8 } },
			},
		];
		for (const pressed of ['x', -3, undefined])
			expect(await stands({ pressed }, { layers, covers })).toEqual({
				stops: ['stock.cloths.0.pressed'],
				checks: [],
				parts: [
					['Step', 200],
					['Pit: floor', 130],
				],
				notes: [
					'Until it is known how thick "Carpet" is, left out of Panel: Panel, Hatch, Hatch: ledge. Step, Pit: floor can be cut: no cloth has a say in it.',
				],
				drawn: false,
				blanks: 0,
			});
	});

	it('keeps the board where no edge is wrapped', async () => {
		const edges = { all: { end: 'bare' } };
		const made = await stands({ pressed: 'x' }, { edges });
		expect(made).toMatchObject({ parts: [['Panel', 599]], drawn: false, blanks: 0 });
		const window = { id: 'w', outline: at(100, 100, 90, 90) };
		expect((await stands({ pressed: 'x' }, { edges, windows: [window] })).parts).toEqual([]);
		const bare = { ...window, end: 'bare' };
		expect((await stands({ pressed: 'x' }, { edges, windows: [bare] })).parts).toEqual([
			['Panel', 599],
		]);
	});

	it('loose takes no board along but one that folds on its cloth', async () => {
		const whole = await stands({ loose: 'x' }, {});
		expect(whole).toEqual({
			stops: ['stock.cloths.0.loose'],
			checks: [],
			parts: [['Panel', 593]],
			notes: [],
			drawn: true,
			blanks: 0,
		});
		const hinge = { id: 'h', from: { x: 300, y: 0 }, to: { x: 300, y: 400 } };
		expect((await stands({ loose: 'x' }, { hinges: [hinge] })).parts).toEqual([]);
		expect((await stands({ loose: 'x' }, { hinges: [{ ...hinge, gap: 8 }] })).parts).toHaveLength(
			2,
		);
	});

	it('of both thicknesses is said of each, and of nothing else', async () => {
		const made = await stands({ loose: 'x', pressed: 'y' }, {});
		expect(made.stops).toEqual(['stock.cloths.0.loose', 'stock.cloths.0.pressed']);
		expect(made.checks).toEqual([]);
	});

	it('keeps the boards of a box, and does not say whether it goes in', async () => {
		const file = job({ loose: 'x' });
		const box = {
			id: 'b',
			name: 'Box',
			material: 'ply',
			shape: { kind: 'plain', width: 500, height: 300, depth: 300 },
			carpet: { cloth: 'carpet' },
			space: { width: 520, height: 320, depth: 320, clearance: 2 },
		};
		const made = await plan({ ...file, panels: [], boxes: [box] }, { effort: 5 });
		expect(made.parts).toHaveLength(6);
		expect(made.boxes[0]?.figures?.fit.fits).toBeNull();
		const notes = made.problems.filter((p) => p.kind === 'note').map((p) => p.what);
		expect(notes).toContain(
			'It is not known how thick "Carpet" lies on Box: its sizes are those of the bare box, and whether it goes in with its cloth is not said.',
		);
	});

	it('that is unlikely is asked back', async () => {
		expect((await made({ pressed: 26, loose: 30 })).said).toEqual([
			'check stock.cloths.0.pressed',
			'check stock.cloths.0.loose',
		]);
		expect((await made({ pressed: 10, loose: 25 })).said).toEqual([]);
	});
});

describe('a roll that is refused', () => {
	it('is said once: the stock does list it', async () => {
		expect((await made({}, { usable: 1600 })).said).toEqual(['stop stock.rolls.0.usable']);
		expect((await made({}, { usable: -4 })).said).toEqual(['stop stock.rolls.0.usable']);
	});

	it('of another cloth leaves the complaint that there is none', async () => {
		const file = job({});
		const bare = { ...file, stock: { ...file.stock, rolls: [] } };
		const { problems } = await plan(bare, { effort: 5 });
		expect(problems.map((p) => p.what).join()).toContain('The stock lists no roll of Carpet.');
	});
});
