import { area } from '../geometry';
import type { Cloth } from '../job';
import { TICKS_PER_MM } from '../measure';
import type { Blank } from './blank';

const MM2_PER_M2 = 1e6;

/** With the mass of one blank as it is cut, windows not yet cut out of it. */
export function weighed(blanks: readonly Blank[], cloth: Pick<Cloth, 'massPerArea'>): Blank[] {
	return blanks.map((b) => {
		const mm2 = Math.abs(area(b.outline)) / TICKS_PER_MM ** 2;
		return { ...b, mass: (mm2 / MM2_PER_M2) * cloth.massPerArea };
	});
}

/** Cloth on all boxes or panels of one kind together, kg; adhesive and foam are not counted. */
export function clothMass(blanks: readonly Blank[], owner: string): number {
	return blanks
		.filter((b) => b.owner === owner)
		.reduce((sum, b) => sum + (b.mass ?? 0) * b.count, 0);
}
