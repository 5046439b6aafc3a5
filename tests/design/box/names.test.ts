import { describe, expect, it } from 'vitest';
import { figures, told, type Asked } from './make';

const plain: Asked = { shape: { kind: 'plain', width: 600, height: 400, depth: 350 } };
const driver = { cutout: { kind: 'round' as const, diameter: 160 }, frame: 190, depth: 80 };

describe('names in a box', () => {
	it('says when two things share one', () => {
		const braces = [
			{ kind: 'window' as const, at: 200, name: 'Frame' },
			{ kind: 'window' as const, at: 400, name: 'Frame' },
		];
		expect(told({ ...plain, braces }, 'braces.1.name').join(' ')).toContain("'Frame'");
		expect(told({ ...plain, braces }, 'braces.0.name')).toEqual([]);
		const drivers = [driver, { ...driver, at: { across: 460 }, name: 'Driver 1' }];
		expect(told({ ...plain, drivers }, 'drivers.1.name').join(' ')).toContain("'Driver 1'");
	});

	it('measures each of two drivers of one name by its own cut-out', () => {
		const drivers = [
			{ ...driver, name: 'A', at: { across: 120 } },
			{ ...driver, name: 'A', at: { across: 430 } },
		];
		expect(figures({ ...plain, drivers }).drivers.map((d) => d.edge / 1600)).toEqual([40, 54]);
	});

	it('says which boards the form does not have', () => {
		const boards = { 'step-top': { grain: 'any' as const }, front: { grain: 'any' as const } };
		const [text] = told({ ...plain, boards }, 'boards.step-top');
		expect(text).toContain("no board 'step-top'");
		expect(text).toContain('front');
		expect(told({ ...plain, boards }, 'boards.front')).toEqual([]);
		const lining = { thickness: 10, boards: ['cut'] };
		expect(told({ ...plain, lining }, 'lining.boards.0').join(' ')).toContain("'cut'");
	});
});
