import fc from 'fast-check';
import { ticks } from '../../../src/lib/measure/length';
import { nestRouter } from '../../../src/lib/nest/router/router';
import type { Piece, RouterProblem, Sheet, SheetsAnswer } from '../../../src/lib/nest/types';

export function route(problem: RouterProblem, effort = 300, seed = 1): SheetsAnswer {
	const search = nestRouter(problem, { seed, effort });
	let step = search.next();
	while (step.done !== true) step = search.next();
	return step.value;
}

export function sheet(length: number, width: number, more: Partial<Sheet> = {}): Sheet {
	const none = ticks(0);
	const trim = { left: none, right: none, bottom: none, top: none };
	const plain = { id: `${length}x${width}`, price: 100, count: null, rank: 2, trim };
	return { length: ticks(length), width: ticks(width), ...plain, ...more };
}

export function piece(
	id: string,
	length: number,
	width: number,
	count = 1,
	turns: Piece['turns'] = 'any',
): Piece {
	return { id, length: ticks(length), width: ticks(width), count, turns };
}

export function router(
	sheets: readonly Sheet[],
	pieces: readonly Piece[],
	bit = 0,
	useHoles = false,
): RouterProblem {
	return {
		bit: ticks(bit),
		sheets,
		pieces,
		useHoles,
		keep: { length: ticks(10), width: ticks(10) },
	};
}

const size = (most: number) => fc.integer({ min: 1, max: most });
const anySheet = fc.record({
	length: size(60),
	width: size(60),
	price: fc.integer({ min: 0, max: 50 }),
	count: fc.option(fc.integer({ min: 0, max: 3 })),
	rank: fc.integer({ min: 0, max: 2 }),
	trim: fc.integer({ min: 0, max: 5 }),
});
const anyPiece = fc.record({
	length: size(40),
	width: size(40),
	count: fc.integer({ min: 0, max: 4 }),
	turns: fc.constantFrom('any', 'half', 'none'),
} as const);

/** Any router problem of rectangles, possible or not. */
export const anyRouter: fc.Arbitrary<RouterProblem> = fc
	.record({
		bit: fc.integer({ min: 0, max: 4 }),
		sheets: fc.array(anySheet, { maxLength: 4 }),
		pieces: fc.array(anyPiece, { maxLength: 8 }),
	})
	.map(({ bit, sheets, pieces }) => {
		const stock = sheets.map(({ length, width, trim, ...rest }, i) => {
			const t = ticks(trim);
			return sheet(length, width, {
				...rest,
				id: `sheet ${i}`,
				trim: { left: t, right: t, bottom: t, top: t },
			});
		});
		return router(
			stock,
			pieces.map((p, i) => piece(`piece ${i}`, p.length, p.width, p.count, p.turns)),
			bit,
		);
	});
