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
