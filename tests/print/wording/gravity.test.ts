import { expect, test } from 'vitest';
import { gravityText } from '../../../src/lib/print/wording';
import { figuresOn } from '../../../src/lib/print/wording/figures';
import { figures, type Asked } from '../../design/box/make';

const ruler = { unit: 'mm', fraction: 32, decimal: '.' } as const;
const said = (more: Partial<Asked>): string => {
	const box = figures({ shape: { kind: 'plain', width: 600, height: 400, depth: 400 }, ...more });
	return gravityText(box, figuresOn(ruler), ruler);
};
const driver = {
	cutout: { kind: 'round' as const, diameter: 180 },
	frame: 210,
	depth: 90,
	mass: 4,
};
const amp = {
	name: 'Amp',
	board: 'back',
	length: 200,
	width: 150,
	height: 50,
	x: 50,
	y: 50,
	mass: 3,
};

test('what is weighed is named, and nothing else', () => {
	expect(said({})).toContain('kg loaded (boards), its centre of gravity');
	expect(said({})).not.toMatch(/driver|device|radiator/);
	expect(said({ drivers: [driver] })).toContain('loaded (boards and drivers)');
	expect(said({ devices: [amp] })).toContain('loaded (boards and devices)');
	expect(said({ devices: [amp] })).toMatch(/not counted, devices at the middle of their bodies$/);
	expect(
		said({
			drivers: [driver],
			devices: [amp],
			braces: [{ kind: 'dowel', diameter: 20, a: 60, b: 90 }],
		}),
	).toContain('loaded (boards, rods, drivers and devices)');
});
