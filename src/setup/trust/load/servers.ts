import { createClient } from '@redis/client';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sample from '../../../../shared/jobs/camper-bench.json';
import { RawDevice } from '../kills/raw-device';
import { RedisProcess } from '../kills/redis-process';
import { ServerProcess } from '../kills/server-process';
import type { Asked, Row } from '../row';
import { fill, residentOf, spread } from './in-a-shop';

/** Devices that have one job open, half of them at each server. */
const DEVICES = 20;
/** Edits timed from one server to the other, and edits of each device at once. */
const TIMED = 100;
const AT_ONCE = 50;

/** What one shop at two servers over one store takes, on this machine: no limit is looked for. */
export async function loadedServers({ count = 1000, note }: Asked): Promise<Row> {
	const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-load-'));
	const store = await RedisProcess.start(folder);
	const servers = [
		await ServerProcess.start(store.url, 0),
		await ServerProcess.start(store.url, 0),
	];
	const [one, two] = servers as [ServerProcess, ServerProcess];
	const before = await memoryOf(store);
	const filled = await fill(servers, count, note);
	const bytes = ((await memoryOf(store)) - before) / count;
	const devices: RawDevice[] = [];
	for (let i = 0; i < DEVICES; i++) {
		const device = new RawDevice((i % 2 ? one : two).port, 'job busy');
		await device.in(one.secret);
		devices.push(device);
	}
	const [kept, told] = await timed(devices);
	const together = await allAtOnce(devices);
	const memory = servers.map(({ pid }) => (residentOf(pid) / 1024).toFixed(0)).join(' and ');
	for (const device of devices) device.close();
	for (const server of servers) await server.kill();
	await store.kill();
	rmSync(folder, { recursive: true, force: true });
	return {
		what: 'one shop at two servers over one store',
		tried: count,
		survived: count,
		found: [],
		notes: [
			`${count} sample jobs of ${JSON.stringify(sample).length} bytes: ${bytes.toFixed(0)} bytes of memory each in the store, brought in ${filled.toFixed(0)} s`,
			`an edit is kept after ${spread(kept)} ms and at a device of the other server after ${spread(told)} ms (median, 99th of ${TIMED})`,
			`${DEVICES} devices in one job: ${together.toFixed(0)} edits a second, each kept and told to all; ${memory} MiB of memory in the servers`,
		],
		notCovered: 'a network between the machines; more than one shop at once',
	};
}

/** Milliseconds until an edit at the one server is kept, and until a device of the other has it. */
async function timed([desk, saw]: readonly RawDevice[]): Promise<[kept: number[], told: number[]]> {
	const [kept, told]: [number[], number[]] = [[], []];
	for (let i = 0; desk && saw && i < TIMED; i++) {
		const begun = performance.now();
		const isTold = new Promise<void>((done) => {
			const end = saw.doc.onUpdate(() => {
				end();
				told.push(performance.now() - begun);
				done();
			});
		});
		const size = desk.kept.size;
		desk.type(`timed ${i}`, `=${i}`);
		while (desk.kept.size === size) await new Promise((done) => setImmediate(done));
		kept.push(performance.now() - begun);
		await isTold;
	}
	return [kept, told];
}

/** Edits a second. */
async function allAtOnce(devices: readonly RawDevice[]): Promise<number> {
	const begun = performance.now();
	devices.forEach((device, d) => {
		for (let i = 0; i < AT_ONCE; i++) device.type(`${d} ${i}`, `=${i}`);
	});
	const all = devices.length * AT_ONCE + TIMED;
	while (devices.some(({ doc }) => doc.keys('typed').length < all))
		await new Promise((done) => setTimeout(done, 1));
	return (devices.length * AT_ONCE) / ((performance.now() - begun) / 1000);
}

async function memoryOf(store: RedisProcess): Promise<number> {
	const client = await createClient({ url: store.url }).connect();
	const info = await client.info('memory').finally(() => client.destroy());
	return Number(/used_memory:(\d+)/.exec(info)?.[1]);
}
