import fc from 'fast-check';
import { ticks } from '../../../src/lib/measure/length';
import type { Piece, SawProblem, Search, Sheet } from '../../../src/lib/nest/types';

/** Drives a search to its end. */
export function finish<Answer>(search: Search<Answer>): Answer {
	for (;;) {
		const step = search.next();
		if (step.done) return step.value;
	}
}

export const untrimmed = { left: ticks(0), right: ticks(0), bottom: ticks(0), top: ticks(0) };

export function sheet(id: string, length: number, width: number, more: Partial<Sheet> = {}): Sheet {
	const size = { length: ticks(length), width: ticks(width) };
	return { id, ...size, price: 1, count: null, rank: 2, trim: untrimmed, ...more };
}

export function piece(
	id: string,
	length: number,
	width: number,
	count = 1,
	more: Partial<Piece> = {},
): Piece {
	return { id, length: ticks(length), width: ticks(width), count, turns: 'half', ...more };
}

export function sawProblem(
	sheets: readonly Sheet[],
	pieces: readonly Piece[],
	more: Partial<SawProblem> = {},
): SawProblem {
	return {
		kerf: ticks(0),
		sheets,
		pieces,
		stages: null,
		fenceLimit: null,
		narrowestRip: null,
		keep: { length: ticks(1), width: ticks(1) },
		first: 'any',
		...more,
	};
}

const whole = (min: number, max: number) => fc.integer({ min, max }).map(ticks);

const anyPiece = (least: number) =>
	fc
		.record({
			length: whole(least, 45),
			width: whole(least, 30),
			count: fc.integer({ min: 0, max: 5 }),
			turns: fc.constantFrom<Piece['turns']>('any', 'half', 'none'),
			taper: fc.integer({ min: 0, max: 12 }),
		})
		.map(({ taper, ...p }) => {
			const lean = Math.min(taper - 6, p.length - 1);
			if (lean <= 0) return p;
			const outline = [
				{ x: 0, y: 0 },
				{ x: p.length as number, y: 0 },
				{ x: p.length - lean, y: p.width as number },
				{ x: 0, y: p.width as number },
			];
			return { ...p, outline };
		});

const trim = fc.oneof(
	{ weight: 2, arbitrary: fc.constant(untrimmed) },
	{
		weight: 1,
		arbitrary: fc.record({
			left: whole(0, 4),
			right: whole(0, 4),
			bottom: whole(0, 4),
			top: whole(0, 4),
		}),
	},
);

const anySheet = fc.record({
	length: whole(20, 60),
	width: whole(15, 50),
	price: fc.integer({ min: 0, max: 9 }),
	count: fc.oneof(fc.constant(null), fc.integer({ min: 0, max: 3 })),
	rank: fc.integer({ min: 0, max: 2 }),
	trim,
});

/** Random problems with everything a shop may ask for; `limits` adds those of the saw. */
export function problems(limits: boolean): fc.Arbitrary<SawProblem> {
	const limit = (min: number, max: number) =>
		limits ? fc.oneof(fc.constant(null), whole(min, max)) : fc.constant(null);
	return fc.record({
		kerf: whole(0, 4),
		sheets: fc
			.array(anySheet, { minLength: 1, maxLength: 3 })
			.map((all) => all.map((s, i) => ({ id: `s${i}`, ...s }))),
		pieces: fc
			.array(anyPiece(2), { maxLength: 8 })
			.map((all) => all.map((p, i) => ({ id: `p${i}`, ...p }))),
		stages: limits
			? fc.oneof(fc.constant(null), fc.integer({ min: 1, max: 5 }))
			: fc.constant(null),
		fenceLimit: limit(15, 60),
		narrowestRip: limit(1, 12),
		keep: fc.record({ length: whole(1, 20), width: whole(1, 20) }),
		first: fc.constantFrom<SawProblem['first']>('any', 'rip', 'cross'),
	});
}
