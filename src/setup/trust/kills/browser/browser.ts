import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { random, type Random } from '../../../../lib/nest';
import { build, isStale } from '../../../build.js';
import { serve } from '../../../../shop/serve.js';
import { ROOT } from '../../../tool.js';
import { Chromium } from '../../browser';
import type { Asked, Row } from '../../row';
import { Booking } from './booking';
import type { Moment } from './moment';
import { Typing } from './typing';
import { Upgrading } from './upgrading';

/*
 * Somebody works, and the browser is gone. What stands when it is opened again may be newer than
 * the last word said to be kept, never older, and is whole. By the screen alone: whatever the store
 * is. Each fourth go begins with a database of the first version, in which the next three work.
 */

/** Longest time of work before the kill, ms. */
const LONGEST = 4000;

export async function killedBrowser({ seed, count = 200, note }: Asked): Promise<Row> {
	if (isStale() && (await build()) !== 0) throw new Error('the app cannot be built');
	const { address, close } = await serve(join(ROOT, 'build'), 4391);
	const dice = random(seed);
	const found: string[] = [];
	const totals = { typed: 0, said: 0, booked: 0, stood: 0 };
	for (let n = 0; n < count;) {
		const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-profile-'));
		const [booking, merging, typing] = [
			new Booking(),
			new Typing('types in two windows', 2),
			new Typing('types', 1),
		];
		for (const moment of [new Upgrading(), booking, merging, typing].slice(0, count - n)) {
			const wrong = await once(moment, { folder, address, dice });
			if (wrong !== null) found.push(`kill ${n}, ${moment.name}: ${wrong}`);
			note(`kills of the browser ${++n} of ${count}`);
		}
		totals.typed += merging.typed + typing.typed;
		totals.said += merging.said + typing.said;
		totals.booked += booking.booked;
		totals.stood += booking.stood;
		rmSync(folder, { recursive: true, force: true });
	}
	close();
	return rowOf(count, found, totals);
}

interface Place {
	readonly folder: string;
	readonly address: string;
	readonly dice: Random;
}

/** One kill, and what it left wrong, in words; null for nothing. */
async function once(moment: Moment, { folder, address, dice }: Place): Promise<string | null> {
	const chromium = await Chromium.open(folder);
	const { page } = chromium;
	const begins = () => {
		const end = performance.now() + dice.unit() * LONGEST;
		return { goesOn: () => performance.now() < end };
	};
	await moment.work({ page, address, dice, begins });
	await chromium.kill();
	const again = await Chromium.open(folder);
	try {
		return await moment.wrong(again.page, address);
	} finally {
		await again.kill();
	}
}

interface Totals {
	readonly typed: number;
	readonly said: number;
	readonly booked: number;
	readonly stood: number;
}

function rowOf(count: number, found: readonly string[], { typed, said, booked, stood }: Totals) {
	const goes = (of: number): number => Math.floor((count + 3 - of) / 4);
	return {
		what: 'browser killed while somebody works',
		tried: count,
		survived: count - found.length,
		lost: found.length,
		found,
		notes: [
			`${goes(0)} kills while an old database was taken over; ${goes(1)} while a sheet was booked and the booking taken back (${booked} bookings; after ${stood} kills it stood); ${goes(2)} while two windows typed and merged and ${goes(3)} while one typed (${typed} words; in ${said} goes some were said to be kept before the kill)`,
		],
		notCovered: 'a cut of the power; killed while a device of a shop is being merged',
	} satisfies Row;
}
