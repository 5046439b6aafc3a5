import { describe, expect, it } from 'vitest';
import { made, type Asked } from './make';

describe('the way through an opening', () => {
	it('turns a box at any angle to get it through an opening', () => {
		const slab: Asked = { shape: { kind: 'plain', width: 1000, height: 1000, depth: 60 } };
		const turn = (width: number, height: number) =>
			made({ ...slab, opening: { width, height } }).figures!.fit.turn;
		// Turned by half past thirty degrees it takes 559.236 x 892.081 mm; at 30 and at 31 more.
		expect(turn(559.24, 892.09)).toMatch(/turned (30\.5|149\.5)°/);
		expect(turn(559.2, 892.05)).toBeNull();
	});
});
