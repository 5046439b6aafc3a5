import type { Random } from '../../../lib/nest';
import { mutateTree } from './mutate';
import { pick, RAW } from './strange';

/*
 * Plain nest problems, a few pieces each, and then changed.
 */

export function nestCase(dice: Random): string {
	const tree = dice.int(3) ? sheets(dice) : roll(dice);
	mutateTree(tree, dice.int(5), dice);
	return JSON.stringify(tree).replace(RAW, (_, raw: string) => raw);
}

function sheets(dice: Random): Record<string, unknown> {
	const kinds = 1 + dice.int(3);
	return {
		nest: 'sheets',
		method: pick(['saw', 'saw', 'router'], dice),
		kerf: pick([0, 3.2, '1/8 in', 50], dice),
		trim: pick([0, 6, 500], dice),
		stages: pick([null, 1, 2, 3], dice),
		sheets: Array.from({ length: kinds }, (_, i) => ({
			id: `s${i}`,
			length: 100 + dice.int(2500),
			width: 100 + dice.int(1300),
			price: dice.int(100),
			count: pick([null, 1, 5], dice),
		})),
		pieces: pieces(dice, pick(['any', 'half', 'none'], dice)),
	};
}

function roll(dice: Random): Record<string, unknown> {
	return {
		nest: 'roll',
		width: 500 + dice.int(1500),
		gap: dice.int(20),
		limit: pick([null, 3000, 100], dice),
		repeat: pick([0, 0, 320], dice),
		pieces: pieces(dice, pick([[0], [0, 180], [0, 90, 180, 270]], dice)),
	};
}

function pieces(dice: Random, turns: unknown): unknown[] {
	return Array.from({ length: 1 + dice.int(8) }, (_, i) => ({
		id: `p${i}`,
		...(dice.int(4) ? sides(dice) : { outline: corners(dice) }),
		count: 1 + dice.int(4),
		turns,
	}));
}

const sides = (dice: Random): object => ({
	length: 20 + dice.int(1200),
	width: 20 + dice.int(600),
});

/** A ring of corners; one in three crosses itself. */
function corners(dice: Random): [number, number][] {
	const n = 3 + dice.int(6);
	const mix = dice.int(3) === 0;
	return Array.from({ length: n }, (_, i) => {
		const turn = ((mix ? dice.int(n) : i) / n) * 2 * Math.PI;
		const far = 60 + dice.int(300);
		return [Math.round(400 + far * Math.cos(turn)), Math.round(400 + far * Math.sin(turn))];
	});
}
