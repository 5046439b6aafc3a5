import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { random } from '../../../lib/nest';
import { ROOT } from '../../tool.js';
import type { Asked, Row } from '../row';

/** Longest wait after the first plan is written, ms: the writer has long begun to replace it. */
const LONGEST = 150;

/**
 * The command line's way of leaving files, killed while it replaces one plan by the next: whole old
 * or whole new, never mixed.
 */
export async function killedCommands({ seed, count = 200, note }: Asked): Promise<Row> {
	const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-kills-'));
	const dice = random(seed);
	const found: string[] = [];
	let lost = 0;
	let within = 0;
	for (let n = 0; n < count; n++) {
		const place = join(folder, String(n));
		await killed(place, dice.unit() * LONGEST);
		const { wrong, whole, half } = judged(place);
		if (wrong !== null) found.push(`kill ${n}: ${wrong}`);
		if (!whole) lost++;
		if (half) within++;
		rmSync(place, { recursive: true, force: true });
		note(`kills of the command line ${n + 1} of ${count}`);
	}
	rmSync(folder, { recursive: true, force: true });
	return {
		what: 'command line killed while it writes',
		tried: count,
		survived: count - found.length,
		lost: found.length,
		crashed: found.length,
		found,
		notes: [
			`${within} found the folder between two plans (files under passing names); in ${lost} of all kills no file of a plan stood under its own name, for the old one had gone and the new one was yet to come`,
		],
		notCovered: 'a cut of the power, where the disk itself may keep half',
	};
}

/** Runs the writer of the tests for a while after its first plan, and kills it. */
function killed(place: string, after: number): Promise<void> {
	const child = spawn(process.execPath, ['--import', 'tsx', 'tests/cli/writer.ts', place], {
		cwd: ROOT,
		stdio: ['ignore', 'pipe', 'inherit'],
		env: { ...process.env, TSX_TSCONFIG_PATH: 'tsconfig.cli.json' },
	});
	child.stdout.once('data', () => setTimeout(() => child.kill('SIGKILL'), after));
	return new Promise((resolve) => child.once('close', () => resolve()));
}

interface Judged {
	/** What is wrong with the files under their own names, in words; null for nothing. */
	readonly wrong: string | null;
	/** All files of a plan are there. */
	readonly whole: boolean;
	/** It was stopped between two plans. */
	readonly half: boolean;
}

/** The writer leaves four files of one number each, repeated. */
function judged(place: string): Judged {
	const names = existsSync(place) ? readdirSync(place, { recursive: true, encoding: 'utf8' }) : [];
	const own = names.filter((name) => /\.(pdf|csv|json|svg)$/.test(name));
	const texts = own.map((name) => readFileSync(join(place, name), 'utf8'));
	const plans = new Set(texts);
	const torn = texts.some((text) => !/^(\d+) (\1 ){1999}$/.test(text));
	const wrong = torn ? 'a torn file' : plans.size > 1 ? 'files of two plans' : null;
	return { wrong, whole: own.length > 0, half: names.some((name) => name.endsWith('.part')) };
}
