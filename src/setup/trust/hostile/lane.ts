import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { ROOT } from '../../tool.js';
import type { Sort } from './cases';
import type { Tried } from './child';
import { MOST_WORK } from './watch';

/** The heap a process of cases may take, MiB: beyond it the process ends, and the case is found. */
export const MOST_HEAP = 1024;

export interface Span {
	readonly sort: Sort;
	readonly first: number;
	readonly count: number;
	/** Each case so many numbers after the one before: lanes beside each other share a span. */
	readonly step: number;
}

/** Tries a span of cases in processes of their own; one that goes down gives up its case alone. */
export async function lane(span: Span, told: (tried: Tried) => void): Promise<void> {
	for (let left = span; left.count > 0;) {
		const { done, inHand, how } = await attempt(left, told);
		const gone = inHand === null ? 0 : 1;
		if (inHand !== null)
			told({ seed: inHand, work: MOST_WORK, end: 'threw', amiss: [`down: ${how}`], peak: 0 });
		if (done + gone === 0) throw new Error(`the cases cannot be tried: ${how}`);
		const count = left.count - done - gone;
		left = { ...left, first: left.first + (done + gone) * left.step, count };
	}
}

interface Ending {
	readonly done: number;
	readonly inHand: number | null;
	readonly how: string;
}

function attempt(span: Span, told: (tried: Tried) => void): Promise<Ending> {
	const child = spawn(process.execPath, argsOf(span), {
		cwd: ROOT,
		stdio: ['ignore', 'pipe', 'pipe'],
		env: { ...process.env, TSX_TSCONFIG_PATH: 'tsconfig.cli.json' },
	});
	let inHand: number | null = null;
	let done = 0;
	let last = '';
	child.stderr.on('data', (chunk: Buffer) => (last = (last + chunk.toString()).slice(-2000)));
	const lines = createInterface({ input: child.stdout });
	lines.on('line', (line) => {
		const said = JSON.parse(line) as Tried | { readonly begins: number };
		inHand = 'begins' in said ? said.begins : null;
		if ('begins' in said) return;
		done++;
		told(said);
	});
	const read = new Promise<void>((resolve) => lines.once('close', resolve));
	return new Promise((resolve, reject) => {
		child.once('error', reject);
		child.once('close', (code, signal) => {
			void read.then(() => resolve({ done, inHand, how: `${signal ?? code} ${last}`.trim() }));
		});
	});
}

function argsOf({ sort, first, count, step }: Span): string[] {
	const script = join('src', 'setup', 'trust', 'hostile', 'child.ts');
	const heap = [`--max-old-space-size=${MOST_HEAP}`, '--max-semi-space-size=64'];
	return [...heap, '--import', 'tsx', script, sort, ...[first, count, step].map(String)];
}
