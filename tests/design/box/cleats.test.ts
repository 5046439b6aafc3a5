import { describe, expect, it } from 'vitest';
import { apart } from '../../../src/lib/design/box/solid/apart';
import { figures, told, type Asked } from './make';

/** 464 x 364 x 364 mm inside, cleats round its ends. */
const BOX: Asked = {
	shape: { kind: 'plain', width: 500, height: 400, depth: 400 },
	cleats: { where: 'ends', width: 30, material: 'mdf-12' },
};
const shelfAt = (at: number): Pick<Asked, 'dividers'> => ({
	dividers: [{ across: 'height', at, material: 'mdf-12' }],
});
/** Takes 54.1 mm over the bottom. */
const SLOT: Pick<Asked, 'vents'> = {
	vents: [
		{
			kind: 'slot',
			along: 'bottom',
			gap: 42,
			material: 'mdf-12',
			goal: { by: 'length', length: 300 },
		},
	],
};

/** Names of boards that stand in each other's place. */
function clashes(asked: Asked): string[] {
	const { boards } = figures(asked);
	return boards.flatMap((a, i) =>
		boards
			.slice(i + 1)
			.filter((b) => !apart(a.solid, b.solid))
			.map((b) => `${a.name} and ${b.name}`),
	);
}

const cleatsOf = (asked: Asked): string[] =>
	figures(asked)
		.boards.filter((b) => b.role === 'cleat')
		.map((b) => b.name);

describe('cleats round the ends', () => {
	it('lie on all four boards at each end where there is room', () => {
		expect(clashes(BOX)).toEqual([]);
		expect(cleatsOf(BOX)).toHaveLength(8);
		expect(told(BOX, 'cleats.width')).toEqual([]);
	});

	it('are left out, and it is said, where a slot leaves less room than they are thick', () => {
		const low = { ...BOX, ...shelfAt(60), ...SLOT };
		expect(clashes(low)).toEqual([]);
		expect(cleatsOf(low)).toHaveLength(8);
		expect(told(low, 'cleats.width').join()).toContain('Divider-1 / Left end');
	});

	it('lie over a slot where there is room for one', () => {
		const high = { ...BOX, ...shelfAt(74), ...SLOT };
		expect(clashes(high)).toEqual([]);
		expect(cleatsOf(high)).toContain('Cleat Divider-1 / Left end');
	});

	it.each([['height'], ['depth']] as const)(
		'never lie in each other where a divider across the %s stands near a wall',
		(across) => {
			for (const at of [5, 12, 13, 20, 24, 25, 40])
				for (const where of ['ends', 'both'] as const) {
					const near: Asked = {
						...BOX,
						cleats: { where, width: 30, material: 'mdf-12' },
						dividers: [{ across, at, material: 'mdf-12' }],
					};
					expect([at, where, clashes(near)]).toEqual([at, where, []]);
				}
		},
	);
});
