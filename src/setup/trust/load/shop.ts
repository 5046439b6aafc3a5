import { mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { SharedDocument } from '../../../lib/store';
import sample from '../../../../shared/jobs/camper-bench.json';
import { RawDevice } from '../kills/raw-device';
import { ServerProcess } from '../kills/server-process';
import type { Asked, Row } from '../row';
import { fill, residentOf, spread } from './in-a-shop';

/** Devices at work, two in each job: what one types the other has. */
const DEVICES = 20;
/** How long they work, minutes, each with an edit a second. */
const MINUTES = 10;
/** Jobs that a device that joins fetches. */
const JOINED = 100;

/** What a shop of one server with a folder takes, on this machine: no limit is looked for. */
export async function loadedShop({ count = 1000, note }: Asked): Promise<Row> {
	const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-load-'));
	const server = await ServerProcess.start(folder, 0);
	await fill([server], count, note);
	const [filled, held] = [bytesOf(folder), residentOf(server.pid)];
	const joining = await joins(server, Math.min(count, JOINED));
	const told = await worked(server, note);
	const memory = residentOf(server.pid);
	await server.kill();
	const begun = performance.now();
	const again = await ServerProcess.start(folder, 0);
	const start = (performance.now() - begun) / 1000;
	const bytes = bytesOf(folder);
	await again.kill();
	rmSync(folder, { recursive: true, force: true });
	return {
		what: 'one shop at one server with a folder',
		tried: count,
		survived: count,
		found: [],
		notes: [
			`${count} sample jobs of ${JSON.stringify(sample).length} bytes: ${(filled / count).toFixed(0)} bytes of disk each, ${mib(held * 1024)} MiB of memory in the server; it starts anew in ${start.toFixed(1)} s`,
			`a device that joins has ${Math.min(count, JOINED)} jobs after ${joining.toFixed(2)} s`,
			`${DEVICES} devices for ${MINUTES} minutes, an edit a second each: at the other device after ${spread(told)} ms (median, 99th of ${told.length}); then ${mib(memory * 1024)} MiB of memory and ${mib(bytes)} MiB of disk`,
		],
		notCovered: 'a network between the machines; photographs',
	};
}

const mib = (bytes: number): string => (bytes / 2 ** 20).toFixed(1);

const bytesOf = (folder: string): number =>
	readdirSync(folder, { recursive: true, withFileTypes: true })
		.filter((entry) => entry.isFile())
		.reduce((sum, { parentPath, name }) => sum + statSync(join(parentPath, name)).size, 0);

/** Seconds until a device that has nothing has all of these jobs. */
async function joins({ port, secret }: ServerProcess, jobs: number): Promise<number> {
	const device = new RawDevice(port, 'job load-0');
	const begun = performance.now();
	await device.in(secret);
	for (let n = 1; n < jobs; n++)
		device.say({ say: 'open', doc: `job load-${n}` }, new SharedDocument().standing());
	const states = (): number => device.words.filter((word) => word['say'] === 'state').length;
	while (states() < jobs) await pause(1);
	device.close();
	return (performance.now() - begun) / 1000;
}

/** Milliseconds from each edit at one device to its coming at the other of that job. */
async function worked(server: ServerProcess, note: Asked['note']): Promise<number[]> {
	const told: number[] = [];
	const devices: RawDevice[] = [];
	const begun = new Map<string, number>();
	for (let d = 0; d < DEVICES; d++) {
		const device = new RawDevice(server.port, `job load-${Math.floor(d / 2)}`);
		await device.in(server.secret);
		device.doc.onUpdate((_, by) => {
			if (by === 'here') return;
			for (const key of device.doc.keys('typed')) {
				const from = begun.get(key);
				if (from === undefined || key.startsWith(`${d} `)) continue;
				begun.delete(key);
				told.push(performance.now() - from);
			}
		});
		devices.push(device);
	}
	for (let second = 0; second < MINUTES * 60; second++) {
		for (const [d, device] of devices.entries()) {
			begun.set(`${d} ${second}`, performance.now());
			device.type(`${d} ${second}`, `=${second}`);
			await pause(1000 / DEVICES);
		}
		note(`second ${second + 1} of ${MINUTES * 60}`);
	}
	while (begun.size > 0) await pause(5);
	for (const device of devices) device.close();
	return told;
}
