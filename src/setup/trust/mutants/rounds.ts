import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { node, tool } from '../../tool.js';
import type { Order, Word } from './in-process';

/** One go at the tests of a room. */
export interface Round {
	/** Below `tests`. */
	readonly room: string;
	/** Only with mutants of that very room: its own tests know it best. */
	readonly own: boolean;
	/** A test that takes longer, s, is not run again with each mutant. */
	readonly longest: number;
}

const OWN = ['measure', 'estimate', 'nest', 'wrap', 'design'];
const OTHERS = ['published', 'geometry', 'second', 'layout', 'plan'];

/** First each room's own tests; then all tests, the long ones left out, with what is left. */
export const ROUNDS: readonly Round[] = [
	...OWN.map((room) => ({ room, own: true, longest: 2 })),
	...[...OTHERS, ...OWN].map((room) => ({ room, own: false, longest: 0.5 })),
];

/** What is known of the mutants by their numbers. */
export interface Known {
	readonly killed: Record<number, string>;
	readonly hung: number[];
	reached: number[];
	/** Tests that took too long to be tried with mutants, and such as a mutant spoilt. */
	left: string[];
	/** Tests that fail in the copy with no mutant at all. */
	failing: string[];
	/** Files of tests whose common part reaches a mutant before they begin. */
	readonly before: Record<number, string[]>;
}

/**
 * Runs the tests of one room with all mutants but `spared`; begins again after a mutant that hangs,
 * which counts as found. Changes `known`.
 */
export async function runRound(
	folder: string,
	{ room, longest }: Round,
	known: Known,
	spared: readonly number[],
): Promise<void> {
	const done: string[] = [];
	for (;;) {
		const judged = [...Object.keys(known.killed).map(Number), ...known.hung, ...spared];
		const { failing } = known;
		const order: Order = { judged, done, longest, fromStart: null, failing };
		await runTests(folder, `tests/${room}/`, order);
		done.push(...take(join(folder, 'words.jsonl'), known));
		const hung = inHand(folder);
		if (hung === null) return;
		known.hung.push(hung);
	}
}

/**
 * Rooms of tests asked of a mutant from the start: its own first, then those that ask the whole.
 */
export function roomsFor(own: string): string[] {
	return [...new Set([own, 'published', 'plan'])].map((room) => `tests/${room}/`);
}

/**
 * Runs tests, folders or files, with a mutant that is there before anything is loaded, in a process
 * of its own, one after the other until one kills it. Changes `known`.
 */
export async function runFromStart(
	folder: string,
	id: number,
	tests: readonly string[],
	known: Known,
): Promise<void> {
	known.reached.push(id);
	for (const one of tests) {
		const { failing } = known;
		await runTests(folder, one, { judged: [], done: [], longest: 0, fromStart: id, failing });
		take(join(folder, 'words.jsonl'), known);
		if (inHand(folder) !== null) known.hung.push(id);
		if (id in known.killed || known.hung.includes(id)) return;
	}
}

async function runTests(folder: string, tests: string, order: Order): Promise<void> {
	writeFileSync(join(folder, 'order.json'), JSON.stringify(order));
	rmSync(join(folder, 'in-hand.txt'), { force: true });
	writeFileSync(join(folder, 'words.jsonl'), '');
	const quiet = ['--reporter=json', `--outputFile=${join(folder, 'tests.json')}`, '--bail'];
	const bail = order.fromStart === null ? '0' : '1';
	await node(tool('vitest'), ['run', '--root', folder, tests, ...quiet, bail], {
		env: { TRUST_SCRATCH: folder, DEPTH: 'mutants' },
		stdio: ['ignore', 'ignore', 'ignore'],
	});
}

/** Takes in what a run said; returns the files of tests that are through. */
function take(file: string, known: Known): string[] {
	const words = readFileSync(file, 'utf8').trim();
	if (words === '') throw new Error('the tests did not run');
	const reached = new Set(known.reached);
	const done: string[] = [];
	for (const line of words.split('\n')) {
		const word = JSON.parse(line) as Word;
		if ('killed' in word) known.killed[word.killed] = word.by;
		else if ('before' in word) note(word.before, word.reached, known);
		else if ('reached' in word) for (const id of word.reached) reached.add(id);
		else if ('done' in word) done.push(word.done);
		else if ('failing' in word) known.failing.push(word.failing);
		else known.left.push('long' in word ? word.long : word.poisoned);
	}
	known.reached = [...reached];
	known.left = [...new Set(known.left)];
	known.failing = [...new Set(known.failing)];
	return done;
}

function note(file: string, ids: readonly number[], { before }: Known): void {
	for (const id of ids) before[id] = [...new Set([...(before[id] ?? []), file])];
}

/** The mutant in hand when the process of the tests ended by force; null for none. */
function inHand(folder: string): number | null {
	const file = join(folder, 'in-hand.txt');
	const text = existsSync(file) ? readFileSync(file, 'utf8') : '';
	return text === '' ? null : Number(text);
}
