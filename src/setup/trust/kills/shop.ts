import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Random, random } from '../../../lib/nest';
import type { Asked, Row } from '../row';
import { RawDevice } from './raw-device';
import { ServerProcess } from './server-process';

/** Longest wait after the first edit was said to be kept, ms: hundreds are answered by then. */
const LONGEST = 250;
/** Edits told at once before the device takes a breath. */
const BURST = 20;

/**
 * A shop's server killed within a burst of edits: whatever it said to have kept is there after the
 * next start, and what the device typed beyond that goes along when it comes back.
 */
export async function killedShops({ seed, count = 200, note }: Asked): Promise<Row> {
	const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-kills-'));
	const dice = random(seed);
	const found: string[] = [];
	let [typed, kept] = [0, 0];
	let server = await ServerProcess.start(folder, 0);
	const { secret } = server;
	for (let n = 0; n < count; n++) {
		const device = new RawDevice(server.port, `job r${n}`);
		await device.in(secret);
		const wrote = await typeAndKill(server, device, dice);
		server = await ServerProcess.start(folder, server.port);
		const wrong = await wrongAfter(server.port, { secret, device, wrote, doc: `job r${n}` });
		if (wrong) found.push(`kill ${n}: ${wrong}`);
		typed += wrote;
		kept += device.kept.size;
		device.close();
		note(`kills of the shop's server ${n + 1} of ${count}`);
	}
	await server.kill();
	rmSync(folder, { recursive: true, force: true });
	return {
		what: "shop's server killed within edits",
		tried: count,
		survived: count - found.length,
		lost: found.length,
		crashed: 0,
		found,
		notes: [
			`${typed} edits told, ${kept} of them said to be kept before a kill, every one of which stood after it; the others went along when the device came back`,
		],
		notCovered: 'a cut of the power, where the disk itself may keep half',
	};
}

async function typeAndKill(
	server: ServerProcess,
	device: RawDevice,
	dice: Random,
): Promise<number> {
	let wrote = 0;
	let [alive, isTimed] = [true, false];
	const kill = (): void => {
		alive = false;
		void server.kill();
	};
	while (alive && !device.closed) {
		if (!isTimed && device.kept.size > 0) {
			isTimed = true;
			setTimeout(kill, dice.unit() * LONGEST);
		}
		for (let i = 0; i < BURST; i++, wrote++) device.type(`k${wrote}`, `=${wrote}`);
		await new Promise((done) => setTimeout(done, 1));
	}
	await server.kill();
	while (!device.closed) await new Promise((done) => setTimeout(done, 1));
	return wrote;
}

/** What the next start lacks of what was said to be kept, and of what the device brings again. */
async function wrongAfter(
	port: number,
	{ secret, device, wrote, doc }: { secret: string; device: RawDevice; wrote: number; doc: string },
): Promise<string | null> {
	const later = new RawDevice(port, doc);
	await later.in(secret);
	// The n-th update of the device is its n-th edit, from 1.
	const lost = [...device.kept].filter((n) => later.doc.register('typed', `k${n - 1}`) === null);
	const rest = device.doc.lacking(later.doc.standing());
	if (rest) later.say({ say: 'update', doc, n: 1 }, rest);
	if (rest) await later.told('kept');
	later.close();
	const last = new RawDevice(port, doc);
	await last.in(secret);
	const stands = last.doc.keys('typed').length;
	last.close();
	if (lost.length > 0) return `${lost.length} edits said to be kept are gone`;
	return stands === wrote ? null : `of ${wrote} edits ${stands} stand after the device came back`;
}
