import { fc, test } from '@fast-check/vitest';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { runs } from '../../depth';
import { Pair, SHEETS } from './model';

/*
 * Three jobs on three devices book sheets, cloth and glue, hold sheets, take back, count and hear
 * of each other; what each shows is what a plain list of everything it knows comes to.
 */

const what = fc.constantFrom(
	...(['book', 'book', 'book', 'pin', 'count', 'undo', 'undo', 'redo', 'hear', 'hear'] as const),
);
/** `n`: which unit is booked, whom is heard, how many are counted. */
const move = fc.record({ who: fc.nat(2), what, n: fc.nat(99) });
type Move = typeof move extends fc.Arbitrary<infer T> ? T : never;

function make(pairs: readonly Pair[], { who, what, n }: Move, at: number, step: number): void {
	const pair = pairs[who]!;
	if (what === 'hear') pair.hears(pairs[n % 3]!);
	else if (what === 'book') pair.book(at, `L${step}`, n);
	else if (what === 'pin') pair.pin(at, SHEETS[n % 3]!);
	else if (what === 'count') pair.count(who === 2 && n > 49 ? 'G0' : SHEETS[who]!, n % 4);
	else if (what === 'undo') pair.undo();
	else pair.redo();
	pair.check();
}

function allMeet(pairs: readonly Pair[]): void {
	for (let round = 0; round < 2; round++)
		for (const one of pairs) for (const other of pairs) one.hears(other);
	for (const pair of pairs) pair.check();
}

const three = (): Pair[] => [0, 1, 2].map((i) => new Pair(`Device ${i}`));

afterEach(() => void vi.restoreAllMocks());

describe('three devices with clocks that differ', () => {
	const met = { lost: 0, chained: 0, none: 0, cloth: 0, held: 0 };

	test.prop(
		[
			fc.array(move, { minLength: 3, maxLength: 25 }),
			fc.tuple(...[0, 1, 2].map(() => fc.integer({ min: -50, max: 50 }))),
		],
		{ numRuns: runs(240, 60) },
	)('show what everything they know comes to, and the same once all know all', (moves, skews) => {
		const pairs = three();
		const clock = vi.spyOn(Date, 'now');
		moves.forEach((it, step) => {
			const at = 1e6 + 10 * (step + skews[it.who]!) + it.who; // no two alike
			clock.mockReturnValue(at);
			make(pairs, it, at, step);
		});
		allMeet(pairs);
		const { model } = pairs[0]!;
		met.lost += model.lost();
		met.chained += model.written.filter(({ takes }) => takes.startsWith('L')).length;
		met.none += SHEETS.filter((id) => model.on(id).length > 0 && model.net(id) === 0).length;
		met.cloth += model.on('K0').filter((deed) => !model.stands(deed)).length;
		met.held += model.written.filter(({ cut }) => !cut).length;
	});

	it('having met bookings without their sheet, sheets used up, offcuts used again', () => {
		expect(
			Object.values(met).every((times) => times > 0),
			JSON.stringify(met),
		).toBe(true);
	});
});

const DAY = 86_400_000;

describe('claims of long ago', () => {
	const met = { folded: 0, undone: 0 };

	test.prop([fc.array(fc.tuple(move, move, move), { minLength: 6, maxLength: 10 })], {
		numRuns: runs(160, 40),
	})('are folded, by several at once, and nobody has anything else by it', (rounds) => {
		const pairs = three();
		const clock = vi.spyOn(Date, 'now');
		rounds.forEach((moves, round) => {
			moves.forEach((it, i) => {
				const at = DAY * 40 * (round + 1) + 10 * i;
				clock.mockReturnValue(at);
				// Fewer than were settled already is told, and nobody is named any more.
				if (it.what !== 'book' && pairs[i]!.movesCount(it.what)) return;
				// An offcut whose line is being taken out while its booking is taken back is lost.
				const isAlone = it.what === 'undo' && pairs[i]!.undoesOffcut;
				if (isAlone) allMeet(pairs);
				if (it.what === 'undo' && pairs[i]!.undoes(at - 90 * DAY)) met.undone++;
				make(pairs, { ...it, who: i }, at, 3 * round + i);
				if (isAlone) allMeet(pairs);
			});
			allMeet(pairs);
		});
		const claims = pairs[0]!.device.claims();
		met.folded += pairs[0]!.model.written.length - claims;
	});

	it('having met some, and steps taken back that were', () => {
		expect(met.folded).toBeGreaterThan(20);
		expect(met.undone).toBeGreaterThan(0);
	});
});
