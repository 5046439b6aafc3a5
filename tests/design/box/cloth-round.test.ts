import { describe, expect, it } from 'vitest';
import { toMm } from '../../../src/lib/measure/length';
import { figures, made, type Asked } from './make';

const cloths = [
	{ id: 'felt', name: 'Felt', loose: 4, pressed: 3 },
	{ id: 'vinyl', name: 'Vinyl', loose: 1, pressed: 1 },
];
const stock = {
	stock: { cloths, materials: [{ id: 'ply-18', name: 'Ply', nominal: 18, measured: 18 }] },
};
const plain: Asked = { shape: { kind: 'plain', width: 600, height: 400, depth: 300 } };
const wrapped = (carpet: NonNullable<Asked['carpet']>, shape: Asked = plain) => {
	const { width, height, depth } = figures({ ...shape, carpet }, stock).fit.wrapped;
	return [width, height, depth].map(toMm);
};

describe('the outside of a box with its cloth', () => {
	it('grows by the cloth on every face', () => {
		expect(wrapped({ cloth: 'felt' })).toEqual([608, 408, 308]);
	});

	it('grows only where there is some', () => {
		expect(wrapped({ cloth: 'felt', cover: ['front', 'top', 'left'] })).toEqual([604, 404, 304]);
	});

	it('grows by the cloth of each face', () => {
		const other = [
			{ face: 'front' as const, cloth: 'vinyl' },
			{ face: 'top' as const, cloth: 'vinyl' },
		];
		expect(wrapped({ cloth: 'felt', other })).toEqual([608, 405, 305]);
	});

	it('is that of a leaning back, and of the sides of a free profile, which have names of their own', () => {
		const leaning: Asked = {
			shape: {
				kind: 'slanted',
				width: 600,
				height: 400,
				lean: { by: 'depths', bottom: 300, top: 200 },
			},
		};
		expect(wrapped({ cloth: 'felt', cover: ['back'] }, leaning)).toEqual([600, 400, 304]);
		const corners = [
			{ x: 0, y: 0 },
			{ x: 300, y: 0 },
			{ x: 300, y: 400 },
			{ x: 0, y: 400 },
		];
		const free: Asked = { shape: { kind: 'free', width: 600, corners } };
		expect(wrapped({ cloth: 'felt' }, free)).toEqual([608, 408, 308]);
		const [, high] = wrapped({ cloth: 'felt', cover: ['side-1'] }, free);
		expect(high).toBe(404);
	});
});

describe('its place and the opening on the way', () => {
	const cover: NonNullable<Asked['carpet']> = { cloth: 'felt', cover: ['front', 'top'] };
	const fits = (asked: Partial<Asked>, carpet = cover) =>
		made({ ...plain, ...asked, carpet }, stock).figures!.fit;

	it('have room for the cloth of the faces that carry it, to the hundredth', () => {
		const space = { width: 600, height: 404, depth: 304, clearance: 0 };
		expect(fits({ space }).fits).toBe(true);
		expect(fits({ space: { ...space, height: 403.99 } }).fits).toBe(false);
		expect(fits({ space: { ...space, depth: 303.99 } }).fits).toBe(false);
		expect(fits({ space }, { cloth: 'felt' }).fits).toBe(false);
	});

	it('let it through upright when it has room for that cloth alone', () => {
		expect(fits({ opening: { width: 600, height: 404 } }).turn).toContain('upright');
		expect(fits({ opening: { width: 600, height: 404 } }, { cloth: 'felt' }).turn).not.toContain(
			'Front first, upright',
		);
		expect(fits({ opening: { width: 404, height: 600 } }).turn).toContain('90°');
	});
});
