import { appendFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { Worker } from 'node:worker_threads';
import { beforeEach } from 'vitest';

/*
 * Loaded before every file of tests in the scratch copy. Without a mutant it notes which mutants
 * each test reaches; with one it lets run only the tests that reach it. What is reached while files
 * are loaded counts for the whole file.
 */

/** What the run is about, left for it as a file. */
export interface Order {
	/** Null: note what is reached. */
	readonly mutant: number | null;
	/** Tests that reach the mutant, as file and name; null for all. */
	readonly tests: readonly string[] | null;
	/** Seconds of processor time before the process is ended as one that hangs. */
	readonly most: number;
}

declare global {
	var mutant__: (id: number) => boolean;
	var reached__: Uint8Array | undefined;
	var watched__: boolean | undefined;
}

const HERE = process.cwd();
const order = JSON.parse(readFileSync(join(HERE, 'order.json'), 'utf8')) as Order;

// Laws draw the same cases for every mutant.
fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: 1 });

globalThis.reached__ ??= new Uint8Array(5000);
const reached = globalThis.reached__;
if (order.mutant === null)
	globalThis.mutant__ = (id) => {
		reached[id] = 1;
		return false;
	};
else globalThis.mutant__ = (id) => id === order.mutant;

/** An endless loop cannot be told to stop from inside. */
if (order.mutant !== null && !globalThis.watched__) {
	globalThis.watched__ = true;
	const watch = `
		const most = ${order.most} * 1e6;
		setInterval(() => {
			const { user, system } = process.cpuUsage();
			if (user + system > most) process.kill(process.pid, 'SIGKILL');
		}, 200);`;
	new Worker(watch, { eval: true }).unref();
}

const nameOf = (test: { file: { name: string }; fullTestName?: string; name: string }): string =>
	`${test.file.name} > ${test.fullTestName ?? test.name}`;

function noteReached(test: string): void {
	if (order.mutant !== null || !reached.includes(1)) return;
	const ids = [...reached].flatMap((met, id) => (met ? id : []));
	appendFileSync(join(HERE, 'reached.jsonl'), JSON.stringify([test, ids]) + '\n');
	reached.fill(0);
}

const wanted = order.tests === null ? null : new Set(order.tests);

beforeEach(({ task, skip }) => {
	noteReached(`${task.file.name} > `);
	if (wanted && !wanted.has(nameOf(task))) skip();
	return () => noteReached(nameOf(task));
});
