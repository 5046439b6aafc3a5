import { describe, expect, it } from 'vitest';
import { made, MATERIALS, type Asked } from './make';

describe('the way through an opening', () => {
	it('turns a box at any angle to get it through an opening', () => {
		const slab: Asked = { shape: { kind: 'plain', width: 1000, height: 1000, depth: 60 } };
		const turn = (width: number, height: number) =>
			made({ ...slab, opening: { width, height } }).figures!.fit.turn;
		// Turned by half past thirty degrees it takes 559.236 x 892.081 mm; at 30 and at 31 more.
		expect(turn(559.24, 892.09)).toMatch(/turned (30\.5|149\.5)°/);
		expect(turn(559.2, 892.05)).toBeNull();
	});

	const clothed = (cover: string[], more: object = {}) =>
		made(
			{
				shape: { kind: 'plain', width: 600, height: 400, depth: 300 },
				carpet: { cloth: 'felt', cover },
				...more,
			},
			{
				stock: {
					materials: MATERIALS,
					cloths: [{ id: 'felt', name: 'Felt', loose: 5, pressed: 3 }],
				},
			},
		).figures!.fit;

	it('counts the cloth of the faces that carry it, and of no others', () => {
		const turn = (cover: string[], width: number, height: number) =>
			clothed(cover, { opening: { width, height } }).turn;
		// The end goes first: 300 deep and 400 high.
		expect(turn(['front'], 305, 400)).toMatch(/^One end first, upright/);
		expect(turn(['front'], 304.9, 400)).toBeNull();
		expect(turn(['left', 'right'], 300, 400)).toMatch(/^One end first, upright/);
		expect(turn([], 310, 410)).toMatch(/^One end first, upright/);
		expect(turn([], 310, 409.9)).toBeNull();
	});

	it('counts it in the slanted back of a space and nowhere twice', () => {
		const space = { width: 700, height: 500, depth: 310, depthTop: 310, clearance: 0 };
		expect(clothed(['front', 'back'], { space }).fits).toBe(true);
		expect(clothed(['top'], { space: { ...space, depth: 300, depthTop: 300 } }).fits).toBe(true);
		expect(clothed(['front'], { space: { ...space, depth: 304, depthTop: 304 } }).fits).toBe(false);
	});
});
