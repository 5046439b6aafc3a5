import { readFileSync } from 'node:fs';
import { seedOf } from '../../../lib/store';
import sample from '../../../../shared/jobs/camper-bench.json';
import { RawDevice } from '../kills/raw-device';
import type { ServerProcess } from '../kills/server-process';
import type { Asked } from '../row';

/** A device brings the sample to that server as the job of that number, until it is kept. */
async function bringJob(
	server: ServerProcess,
	{ secret, n }: { readonly secret: string; readonly n: number },
): Promise<void> {
	const doc = `job load-${n}`;
	const device = new RawDevice(server.port, doc);
	await device.in(secret);
	device.say({ say: 'update', doc, n: 1 }, seedOf({ ...sample, name: `Job ${n}` }));
	await device.told('kept');
	device.close();
}

/** That many jobs, brought to the servers of a shop by turns. Seconds it took. */
export async function fill(
	servers: readonly ServerProcess[],
	count: number,
	note: Asked['note'],
): Promise<number> {
	const begun = performance.now();
	const [{ secret } = { secret: '' }] = servers;
	for (let n = 0; n < count; n++) {
		const server = servers[n % servers.length];
		if (server) await bringJob(server, { secret, n });
		note(`jobs ${n + 1} of ${count}`);
	}
	return (performance.now() - begun) / 1000;
}

/** Median and 99th of a hundred, in words. */
export function spread(times: readonly number[]): string {
	const sorted = [...times].sort((a, b) => a - b);
	const at = (share: number): string =>
		(sorted[Math.floor(share * (sorted.length - 1))] ?? NaN).toFixed(1);
	return `${at(0.5)} and ${at(0.99)}`;
}

/** Memory of a process, KiB. */
export const residentOf = (pid: number): number =>
	Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]);
