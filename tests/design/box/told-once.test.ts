import { describe, expect, it } from 'vitest';
import { made, type Asked } from './make';

const DRIVER = {
	name: 'Low',
	cutout: { kind: 'round', diameter: 180 },
	frame: 210,
	depth: 90,
	displacement: 1,
} as const;
const TUBE = {
	kind: 'round',
	name: 'Tube',
	diameter: 60,
	goal: { by: 'length', length: 120 },
} as const;
const shape = { kind: 'plain', width: 600, height: 400, depth: 400 } as const;

/** Everything that is said of both. */
const about = (asked: Asked, ...names: string[]): string[] =>
	made(asked)
		.problems.map((p) => p.what)
		.filter((what) => names.every((name) => what.includes(name)));

describe('two things on one board', () => {
	it('are told of once where a driver and a vent overlap', () => {
		const asked: Asked = { shape, drivers: [DRIVER], vents: [{ ...TUBE, at: { across: 350 } }] };
		expect(about(asked, 'Low', 'Tube')).toHaveLength(1);
	});

	it('are told of once where two drivers overlap', () => {
		const other = { ...DRIVER, name: 'High', at: { across: 350 } };
		expect(about({ shape, drivers: [DRIVER, other] }, 'Low', 'High')).toHaveLength(1);
	});

	it('are told of where a tube from another board runs into the driver', () => {
		const vents = [
			{ ...TUBE, board: 'top', at: { up: 60 }, goal: { by: 'length', length: 250 } },
		] as const;
		expect(about({ shape, drivers: [DRIVER], vents: [...vents] }, 'Low', 'Tube')).toHaveLength(1);
	});
});
