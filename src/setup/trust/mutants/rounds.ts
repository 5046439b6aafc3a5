import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { node, tool } from '../../tool.js';
import type { Order, Word } from './in-process';

/** Rooms whose tests reach what is mutated, those that know it best first. */
export const TESTED = [
	...['measure', 'estimate', 'wrap', 'nest', 'design', 'published', 'geometry', 'layout'],
	...['second', 'plan'],
].map((room) => `tests/${room}/`);

/** A test that takes longer, s, is not run again with each mutant. */
const LONGEST = 2;

/** What is known of the mutants by their numbers. */
export interface Known {
	readonly killed: Record<number, string>;
	readonly hung: number[];
	reached: number[];
	/** Files of tests that are through. */
	done: string[];
	/** Tests that took too long to be tried with mutants, and such as a mutant spoilt. */
	left: string[];
}

/**
 * Runs the tests of one room with all mutants; begins again after a mutant that hangs, which counts
 * as found. Changes `known`.
 */
export async function round(folder: string, room: string, known: Known): Promise<void> {
	for (;;) {
		const judged = [...Object.keys(known.killed).map(Number), ...known.hung];
		const order: Order = { judged, done: known.done, longest: LONGEST };
		writeFileSync(join(folder, 'order.json'), JSON.stringify(order));
		rmSync(join(folder, 'words.jsonl'), { force: true });
		rmSync(join(folder, 'in-hand.txt'), { force: true });
		const quiet = ['--reporter=json', `--outputFile=${join(folder, 'tests.json')}`];
		await node(tool('vitest'), ['run', '--root', folder, room, ...quiet], {
			env: { TRUST_SCRATCH: folder },
			stdio: ['ignore', 'ignore', 'ignore'],
		});
		take(join(folder, 'words.jsonl'), known);
		const hung = inHand(folder);
		if (hung === null) break;
		known.hung.push(hung);
	}
	known.done.push(...filesOf(folder).filter((file) => !known.done.includes(file)));
}

function take(file: string, known: Known): void {
	if (!existsSync(file)) throw new Error('the tests did not run');
	const reached = new Set(known.reached);
	for (const line of readFileSync(file, 'utf8').trim().split('\n')) {
		const word = JSON.parse(line) as Word;
		if ('killed' in word) known.killed[word.killed] = word.by;
		else if ('reached' in word) for (const id of word.reached) reached.add(id);
		else if ('done' in word) known.done.push(word.done);
		else known.left.push('long' in word ? word.long : word.poisoned);
	}
	known.reached = [...reached];
	known.left = [...new Set(known.left)];
}

/** The mutant in hand when the process of the tests ended by force; null for none. */
function inHand(folder: string): number | null {
	const file = join(folder, 'in-hand.txt');
	const text = existsSync(file) ? readFileSync(file, 'utf8') : '';
	return text === '' ? null : Number(text);
}

function filesOf(folder: string): string[] {
	const file = join(folder, 'tests.json');
	if (!existsSync(file)) return [];
	const { testResults } = JSON.parse(readFileSync(file, 'utf8')) as {
		testResults: readonly { readonly name: string }[];
	};
	return testResults.map(({ name }) => name.slice(name.indexOf('/tests/') + 1));
}
