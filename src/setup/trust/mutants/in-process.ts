import { appendFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { Worker } from 'node:worker_threads';
import { type RunnerTestCase, type RunnerTestFile, TestRunner } from 'vitest';

/*
 * How tests are run in the scratch copy: each once as it is, noting which mutants it reaches, then
 * once more for each of these that nothing has killed yet. So the files are loaded once for all
 * mutants together. For a mutant of a constant, and of what the tests of a file have made in
 * common before they begin, it is too late by then: it is put in before anything is loaded, in a
 * process of its own, and each test run once.
 */

/** What the run is about, left for it as a file. */
export interface Order {
	/** Mutants that are judged already. */
	readonly judged: readonly number[];
	/** Files of tests that were run to their end before. */
	readonly done: readonly string[];
	/** Seconds a test may take for it to be run again with each mutant. */
	readonly longest: number;
	/** The one mutant that stands from the beginning; null where they take turns. */
	readonly fromStart: number | null;
	/** Tests that fail with no mutant at all, and so tell nothing. */
	readonly failing: readonly string[];
}

/** A line of what came of it. */
export type Word =
	| { readonly killed: number; readonly by: string }
	| { readonly reached: readonly number[] }
	/** Mutants reached before the tests of a file begin: in what they have in common. */
	| { readonly before: string; readonly reached: readonly number[] }
	| { readonly poisoned: string }
	| { readonly long: string }
	| { readonly failing: string }
	| { readonly done: string };

declare global {
	var mutant__: (id: number) => boolean;
}

const HERE = process.env['TRUST_SCRATCH'] ?? process.cwd();
const order = JSON.parse(readFileSync(join(HERE, 'order.json'), 'utf8')) as Order;
const IN_HAND = join(HERE, 'in-hand.txt');
const say = (word: Word): void =>
	appendFileSync(join(HERE, 'words.jsonl'), JSON.stringify(word) + '\n');

const reached = new Uint8Array(10_000);
const met = (): number[] => [...reached.keys()].filter((id) => reached[id] === 1);
let active = order.fromStart ?? -1;
globalThis.mutant__ = (id) => {
	reached[id] = 1;
	return id === active;
};

// The first word says that there was a run.
say({ reached: [] });
const gone = new Set(order.judged);
/**
 * Processor time, in microseconds, at which the process is ended: an endless loop ends no other
 * way.
 */
const end = new Float64Array(new SharedArrayBuffer(8));
const WATCH = `
const { workerData: end } = require('node:worker_threads');
setInterval(() => {
	const { user, system } = process.cpuUsage();
	if (end[0] > 0 && user + system > end[0]) process.kill(process.pid, 'SIGKILL');
}, 200);`;
new Worker(WATCH, { eval: true, workerData: end }).unref();

const work = (): number => {
	const { user, system } = process.cpuUsage();
	return user + system;
};

/** Seconds of work a test may take that is run with a mutant put in before it was ever timed. */
const MOST_FROM_START = 60;

export default class MutantRunner extends TestRunner {
	private file = '';

	/** A file that cannot even be loaded with the mutant in it has shown it. */
	override async importFile(file: string, source: 'collect' | 'setup'): Promise<unknown> {
		try {
			return await super.importFile(file, source);
		} catch (error) {
			const name = relative(HERE, file);
			const { fromStart: id } = order;
			if (id === null) say({ failing: name });
			else if (!order.failing.includes(name)) say({ killed: id, by: name });
			throw error;
		}
	}

	override onCollectStart(file: RunnerTestFile): void {
		super.onCollectStart(file);
		reached.fill(0);
	}

	onCollected([file]: RunnerTestFile[]): void {
		const ids = met();
		if (file && ids.length > 0) say({ before: file.name, reached: ids });
	}

	async runTask(test: RunnerTestCase): Promise<void> {
		this.turnTo(test.file.name);
		const run = TestRunner.getTestFn(test);
		if (order.done.includes(test.file.name)) return;
		if (order.fromStart !== null) return this.once(test, run, order.fromStart);
		reached.fill(0);
		const from = work();
		try {
			await run();
		} catch (error) {
			say({ failing: `${test.file.name} > ${test.name}` });
			throw error;
		}
		const took = work() - from;
		const ids = met();
		if (ids.length > 0) say({ reached: ids });
		if (took > order.longest * 1e6) return say({ long: `${test.file.name} > ${test.name}` });
		const killed: number[] = [];
		for (const id of ids.filter((one) => !gone.has(one)))
			if (await this.kills(id, run, 10 * took + 5e6)) killed.push(id);
		if (killed.length === 0) return;
		// What a mutant left behind must not make the next test fail: then nothing is known by it.
		if (!(await sound(run))) return say({ poisoned: `${test.file.name} > ${test.name}` });
		for (const id of killed) {
			gone.add(id);
			say({ killed: id, by: `${test.file.name} > ${test.name}` });
		}
	}

	private async once(test: RunnerTestCase, run: () => unknown, id: number): Promise<void> {
		const by = `${test.file.name} > ${test.name}`;
		if (order.failing.includes(by)) return;
		if (!(await this.kills(id, run, MOST_FROM_START * 1e6))) return;
		say({ killed: id, by });
		throw new Error('killed: no other test is asked');
	}

	private async kills(id: number, run: () => unknown, most: number): Promise<boolean> {
		writeFileSync(IN_HAND, String(id));
		end[0] = work() + most;
		active = id;
		try {
			return !(await sound(run));
		} finally {
			active = order.fromStart ?? -1;
			end[0] = 0;
			writeFileSync(IN_HAND, '');
		}
	}

	private turnTo(file: string): void {
		if (this.file !== '' && this.file !== file) say({ done: this.file });
		this.file = file;
	}
}

async function sound(run: () => unknown): Promise<boolean> {
	try {
		await run();
		return true;
	} catch {
		return false;
	}
}
