import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { nth } from '../../../lib/measure';
import { type Random, random } from '../../../lib/nest';
import type { Asked, Row } from '../row';
import { Door } from './door';
import { RawDevice } from './raw-device';
import { RedisProcess } from './redis-process';
import { ServerProcess } from './server-process';

/** Longest wait after the first edit was said to be kept, ms. */
const LONGEST = 250;
/** Edits of a device at once before it takes a breath. */
const BURST = 10;
/** Edits of a device that wait for an answer: a slow machine must not be drowned in them. */
const AHEAD = 300;
/** Looks at what was kept before a shop is given up, some 20 s. */
const PATIENCE = 15_000;
/** Who is killed, by turns. */
const VICTIMS = ['a server', 'the store', 'a device', 'both servers'] as const;

/** Two servers of one shop, the store they share, and one address before them. */
interface Several {
	readonly folder: string;
	store: RedisProcess;
	readonly servers: ServerProcess[];
	readonly door: Door;
	readonly secret: string;
}

/**
 * One shop at two servers over one store, two devices typing into one job, and somebody killed at
 * any moment: whatever was said to be kept is at either server afterwards, and what the devices
 * typed beyond that goes along when they come back.
 */
export async function killedServers({ seed, count = 200, note }: Asked): Promise<Row> {
	const several = await begin();
	const dice = random(seed);
	const found: string[] = [];
	let [typed, kept] = [0, 0];
	for (let n = 0; n < count; n++) {
		const { doc, pair, wrote } = await typedAndKilled(several, dice, n);
		const wrong = await wrongAfter(several, pair, { doc, wrote });
		if (wrong) found.push(`kill ${n}, ${VICTIMS[n % VICTIMS.length]}: ${wrong}`);
		typed += wrote;
		kept += pair.reduce((sum, device) => sum + device.kept.size, 0);
		for (const device of pair) device.close();
		note(`kills of several servers ${n + 1} of ${count}`);
	}
	await end(several);
	return {
		what: 'several servers, their store and their devices killed within edits',
		tried: count,
		survived: count - found.length,
		lost: found.length,
		crashed: 0,
		found,
		notes: [
			`${typed} edits of two devices, ${kept} of them said to be kept before a kill of ${VICTIMS.join(', ')} by turns; those were looked for at both servers after it, and the others went along when the devices came back`,
		],
		notCovered:
			"a cut of the power, where the disk itself may keep half; a store's standby that takes over",
	};
}

async function begin(): Promise<Several> {
	const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-kills-'));
	const store = await RedisProcess.start(folder);
	const one = await ServerProcess.start(store.url, 0);
	const two = await ServerProcess.start(store.url, 0);
	const door = await Door.before([one.port, two.port]);
	return { folder, store, servers: [one, two], door, secret: one.secret };
}

async function end({ folder, store, servers, door }: Several): Promise<void> {
	door.close();
	for (const server of servers) await server.kill();
	await store.kill();
	rmSync(folder, { recursive: true, force: true });
}

/** As often as it takes: a server that has just lost its store lets nobody in. */
async function comesIn({ servers, door, secret }: Several, doc: string, at?: number) {
	for (let tries = 0; ; tries++) {
		const port = (at === undefined ? undefined : servers[at]?.port) ?? door.port;
		const device = new RawDevice(port, doc);
		try {
			await device.in(secret);
			return device;
		} catch (fault) {
			device.close();
			if (tries > 400) throw fault;
			await pause(25);
		}
	}
}

const pause = (ms: number): Promise<unknown> => new Promise((done) => setTimeout(done, ms));

/**
 * A server that has not yet felt that its store is gone lets devices in and then sends them away:
 * where both are sent away before anything was kept, they begin again with a job of its own.
 */
async function typedAndKilled(several: Several, dice: Random, n: number) {
	for (let tries = 0; ; tries++) {
		const doc = `job r${n}-${tries}`;
		const pair = [await comesIn(several, doc, 0), await comesIn(several, doc, 1)];
		const wrote = await typeAndKill(several, pair, { dice, n });
		if (wrote !== null) return { doc, pair, wrote };
		for (const device of pair) device.close();
		if (tries > 400) throw new Error(`Kill ${n}: no device was kept in`);
	}
}

/** @returns how many edits were typed; null where both devices were sent away before the kill */
async function typeAndKill(
	several: Several,
	pair: readonly RawDevice[],
	{ dice, n }: { readonly dice: Random; readonly n: number },
): Promise<number | null> {
	let wrote = 0;
	let isOver = false;
	const typing = pair.map(async (device, i) => {
		for (let k = 0; !isOver && !device.closed; k += BURST) {
			for (let j = 0; j < BURST; j++, wrote++) device.type(`${i}|${k + j}`, `=${k + j}`);
			do await pause(1);
			while (k - device.kept.size > AHEAD && !isOver && !device.closed);
		}
	});
	const anyKept = (): boolean => pair.some(({ kept }) => kept.size > 0);
	try {
		for (let waits = 0; !anyKept() && pair.some(({ closed }) => !closed); waits++) {
			if (waits > PATIENCE) throw new Error(`${saidTo(pair)} were told nothing was kept`);
			await pause(1);
		}
		if (anyKept()) {
			await pause(dice.unit() * LONGEST);
			await kill(several, pair, n);
		}
	} finally {
		isOver = true;
	}
	await Promise.all(typing);
	return anyKept() ? wrote : null;
}

const saidTo = (pair: readonly RawDevice[]): string =>
	JSON.stringify(pair.map(({ words }) => words.slice(-3)));

/** And starts it again, as whoever looks after it would. */
async function kill(several: Several, pair: readonly RawDevice[], n: number): Promise<void> {
	const victim = VICTIMS[n % VICTIMS.length];
	const { store, servers, folder } = several;
	if (victim === 'a device') return pair[n % 2]?.close();
	if (victim === 'the store') {
		await store.kill();
		several.store = await RedisProcess.start(folder, store.port);
		return;
	}
	const killed = victim === 'a server' ? [Math.floor(n / VICTIMS.length) % 2] : [0, 1];
	await Promise.all(killed.map(async (i) => servers[i]?.kill()));
	const again = killed.map((i) => ServerProcess.start(store.url, servers[i]?.port ?? 0));
	const started = await Promise.all(again);
	killed.forEach((i, k) => servers.splice(i, 1, nth(started, k)));
}

/** What a server lacks of what was said to be kept, and of what the devices bring again. */
async function wrongAfter(
	several: Several,
	pair: readonly RawDevice[],
	{ doc, wrote }: { readonly doc: string; readonly wrote: number },
): Promise<string | null> {
	// A device that lives goes on being answered: what counts was said before the servers are
	// asked.
	const said = pair.map(({ kept }) => [...kept]);
	for (const at of [0, 1]) {
		const later = await comesIn(several, doc, at);
		// The n-th update of a device is its n-th edit, from 1.
		const lost = (): number[] =>
			said.flatMap((kept, i) =>
				kept.filter((k) => later.doc.register('typed', `${i}|${k - 1}`) === null),
			);
		// What one server has only just kept is at the other a moment later.
		for (let wait = 0; lost().length > 0 && wait < 100; wait++) await pause(50);
		const gone = lost().length;
		later.close();
		if (gone > 0) return `${gone} edits said to be kept are gone at server ${at + 1}`;
	}
	for (const device of pair) {
		const back = await comesIn(several, doc);
		const rest = device.doc.lacking(back.doc.standing());
		if (rest) back.say({ say: 'update', doc, n: 1 }, rest);
		if (rest) await back.told('kept');
		back.close();
	}
	const last = await comesIn(several, doc);
	const stands = last.doc.keys('typed').length;
	last.close();
	return stands === wrote ? null : `of ${wrote} edits ${stands} stand after the devices came back`;
}
