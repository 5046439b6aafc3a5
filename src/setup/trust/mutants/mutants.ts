import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ROOT } from '../../tool.js';
import type { Asked, Row } from '../row';
import { chooseMutants, roomOf, ROOMS } from './choose';
import type { Numbered } from './find';
import { type Reach, Rounds, type Verdict } from './rounds';
import { makeScratch } from './scratch';

/** What is known so far, so that a run can be spread over several. */
interface Kept {
	readonly seed: number;
	readonly count: number;
	/** As found when the run was begun. */
	reach: Reach | null;
	readonly verdicts: Record<string, { verdict: Verdict; by: string; seconds: number }>;
}

const KEPT = join(ROOT, 'out', 'trust-mutants.json');

/** Small faults put into the rooms that measure, one at a time: do the tests see them? */
export async function mutants({ seed, count = 420, note }: Asked): Promise<Row[]> {
	const chosen = chooseMutants(seed, count);
	const kept = keptFor(seed, count);
	const left = chosen.filter((mutant) => !kept.verdicts[nameOf(mutant)]);
	if (left.length > 0) await tryAll(chosen, left, kept, note);
	return ROOMS.map(([room]) => rowOf(room, chosen, kept));
}

async function tryAll(
	chosen: readonly Numbered[],
	left: readonly Numbered[],
	kept: Kept,
	note: Asked['note'],
): Promise<void> {
	const folder = join(tmpdir(), `kerf-and-nap-mutants-${process.pid}`);
	makeScratch(folder, chosen);
	process.chdir(folder);
	const rounds = await Rounds.begin(folder);
	try {
		note('mutants: which tests reach them');
		const reach = kept.reach ?? (await rounds.reach());
		kept.reach = reach;
		keep(kept);
		for (const [i, mutant] of left.entries()) {
			const from = performance.now();
			const { verdict, by } = await rounds.verdict(mutant, reach);
			const seconds = Math.round(performance.now() - from) / 1000;
			kept.verdicts[nameOf(mutant)] = { verdict, by, seconds };
			keep(kept);
			note(`mutants ${i + 1} of ${left.length}: ${nameOf(mutant)} ${verdict}`);
		}
	} finally {
		await rounds.end();
		process.chdir(ROOT);
	}
}

function keptFor(seed: number, count: number): Kept {
	const none: Kept = { seed, count, reach: null, verdicts: {} };
	if (!existsSync(KEPT)) return none;
	const read = JSON.parse(readFileSync(KEPT, 'utf8')) as Kept;
	return read.seed === seed && read.count === count ? read : none;
}

function keep(kept: Kept): void {
	mkdirSync(join(ROOT, 'out'), { recursive: true });
	writeFileSync(KEPT, JSON.stringify(kept, null, '\t') + '\n');
}

/** By its place and words, so that what is known of it goes when the code there changes. */
function nameOf({ file, start, end, text }: Numbered): string {
	const source = readFileSync(join(ROOT, file), 'utf8');
	const line = source.slice(0, start).split('\n').length;
	return `${file}:${line} ${short(source.slice(start, end))} -> ${text === null ? 'nothing' : short(text)}`;
}

const short = (text: string): string => text.replace(/\s+/g, ' ').slice(0, 90);

function rowOf(room: string, chosen: readonly Numbered[], kept: Kept): Row {
	const own = chosen
		.filter((mutant) => roomOf(mutant.file) === room)
		.flatMap((mutant) => {
			const known = kept.verdicts[nameOf(mutant)];
			return known ? [{ name: nameOf(mutant), ...known }] : [];
		});
	const alive = own.filter(({ verdict }) => verdict === 'survived' || verdict === 'not reached');
	const hung = own.filter(({ verdict }) => verdict === 'hung').length;
	return {
		what: `mutants of ${room}`,
		tried: own.length,
		survived: alive.length,
		found: alive.map(({ name, verdict }) => `${verdict}: ${name}`),
		notes: [
			`${own.length - alive.length} killed, ${hung} of them by hanging: ${((100 * (own.length - alive.length)) / Math.max(own.length, 1)).toFixed(1)} %`,
		],
		notCovered: 'faults of more than one place; words',
	};
}
