import fc from 'fast-check';
import { ticks } from '../../../src/lib/measure/length';
import { nestRoll } from '../../../src/lib/nest/roll/roll';
import type { RollAnswer, RollPiece, RollProblem } from '../../../src/lib/nest/types';

export type Turns = RollPiece['turns'];
export const FREE: Turns = [0, 90, 180, 270];
export const ONE_WAY: Turns = [0];
export const TWO_WAY: Turns = [0, 180];

/** The answer of a whole search. */
export function lay(problem: RollProblem, effort = 500, seed = 1): RollAnswer {
	const search = nestRoll(problem, { seed, effort });
	let step = search.next();
	while (step.done !== true) step = search.next();
	return step.value;
}

export function blank(
	id: string,
	length: number,
	width: number,
	count: number,
	turns: Turns,
): RollPiece {
	return { id, length: ticks(length), width: ticks(width), count, turns };
}

export function roll(
	width: number,
	pieces: readonly RollPiece[],
	more: Partial<RollProblem> = {},
): RollProblem {
	const plain = { gap: ticks(0), limit: null, repeat: ticks(0), by: 'rectangle' } as const;
	return { ...plain, width: ticks(width), pieces, ...more };
}

/** The same blanks with other turns. */
export function withTurns(problem: RollProblem, turns: Turns): RollProblem {
	return { ...problem, pieces: problem.pieces.map((piece) => ({ ...piece, turns })) };
}

const length = (most: number) => fc.integer({ min: 1, max: most }).map(ticks);

const place = (most: number) => fc.integer({ min: 0, max: most }).map(ticks);

/** Any roll problem of rectangles, possible or not: sizes small enough that coincidences happen. */
export const anyRoll: fc.Arbitrary<RollProblem> = fc
	.record({
		width: length(60),
		gap: fc.integer({ min: 0, max: 4 }).map(ticks),
		limit: fc.option(length(120)),
		repeat: fc.oneof(fc.constant(ticks(0)), length(20)),
		across: fc.option(length(30)),
		drops: fc.boolean(),
		pieces: fc.array(
			fc.record({
				length: length(50),
				width: length(50),
				count: fc.integer({ min: 0, max: 4 }),
				turns: fc.subarray([0, 90, 180, 270] as const),
				phase: fc.option(fc.record({ along: place(40), across: place(60) }), { freq: 3 }),
			}),
			{ maxLength: 8 },
		),
	})
	.map(({ across, drops, pieces, ...rest }) => ({
		...rest,
		by: 'rectangle' as const,
		pieces: pieces.map(({ phase, ...piece }, i) => ({
			...piece,
			id: `blank ${i}`,
			...(phase === null ? {} : { phase }),
		})),
		...(across === null ? {} : drops ? { drop: { across } } : { across }),
	}));
