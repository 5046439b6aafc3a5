import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ROOT } from '../../tool.js';
import type { Asked, Row } from '../row';
import { chooseMutants, roomOf, ROOMS } from './choose';
import type { Numbered } from './find';
import { type Known, type Round, roomsFor, ROUNDS, runFromStart, runRound } from './rounds';
import { makeScratch } from './scratch';
import { EQUIVALENT } from './equivalent';

/** What is known so far, so that a run can be spread over several. */
interface Kept {
	readonly seed: number;
	/** The mutants by name: others, or changed code, begin anew. */
	readonly names: readonly string[];
	/** Rounds that are through. */
	readonly rounds: string[];
	readonly known: Known;
}

const KEPT = join(ROOT, 'out', 'trust-mutants.json');

/** Small faults put into the rooms that measure, one at a time: do the tests see them? */
export async function mutants({ seed, count = 420, note }: Asked): Promise<Row[]> {
	const chosen = chooseMutants(seed, count);
	const kept = keptFor(seed, chosen.map(nameOf));
	const folder = join(tmpdir(), `kerf-and-nap-mutants-${process.pid}`);
	makeScratch(folder, chosen);
	for (const round of ROUNDS.filter((one) => !kept.rounds.includes(keyOf(one)))) {
		note(`mutants: ${dead(kept)} killed; now the tests of ${keyOf(round)}`);
		const far = ({ file }: Numbered): boolean => !file.startsWith(`src/lib/${round.room}/`);
		const spared = round.own ? chosen.filter(far).map(({ id }) => id) : [];
		await runRound(folder, round, kept.known, spared);
		keep(kept, keyOf(round));
	}
	for (const mutant of chosen) {
		const { id } = mutant;
		const key = `from the start: ${id}`;
		const tests = testsFromStart(mutant, kept);
		if (isDead(id, kept) || tests.length === 0 || kept.rounds.includes(key)) continue;
		note(`mutants: ${dead(kept)} killed; now number ${id}, from the start`);
		await runFromStart(folder, id, tests, kept.known);
		keep(kept, key);
	}
	rmSync(folder, { recursive: true, force: true });
	return ROOMS.map(([room]) => rowOf(room, chosen, kept));
}

const keyOf = ({ room, own }: Round): string => `${room}${own ? ' alone' : ''}`;

const dead = ({ known }: Kept): number => Object.keys(known.killed).length + known.hung.length;

const isDead = (id: number, { known }: Kept): boolean =>
	id in known.killed || known.hung.includes(id);

/** Tests that tell of a mutant only when it is there before they are loaded. */
function testsFromStart({ id, file, once }: Numbered, { known }: Kept): readonly string[] {
	return once ? roomsFor(ownTests(file)) : (known.before[id] ?? []);
}

/** The folder of tests of a file's room: `tests/nest` of `src/lib/nest/audit/cuts.ts`. */
const ownTests = (file: string): string => file.split('/')[2] ?? '';

function keep(kept: Kept, round: string): void {
	kept.rounds.push(round);
	mkdirSync(join(ROOT, 'out'), { recursive: true });
	writeFileSync(KEPT, JSON.stringify(kept, null, '\t') + '\n');
}

function keptFor(seed: number, names: readonly string[]): Kept {
	const known = { killed: {}, hung: [], reached: [], left: [], failing: [], before: {} };
	const none: Kept = { seed, names, rounds: [], known };
	if (!existsSync(KEPT)) return none;
	const read = JSON.parse(readFileSync(KEPT, 'utf8')) as Kept;
	return read.names.join('\n') === names.join('\n') ? read : none;
}

/** By its place and words. */
function nameOf({ file, start, end, text }: Numbered): string {
	const source = readFileSync(join(ROOT, file), 'utf8');
	const line = source.slice(0, start).split('\n').length;
	const own = short(source.slice(start, end));
	return `${file}:${line} ${own} -> ${text === null ? 'nothing' : short(text)}`;
}

const short = (text: string): string => text.replace(/\s+/g, ' ').slice(0, 90);

function rowOf(room: string, chosen: readonly Numbered[], { known }: Kept): Row {
	const own = chosen.filter(({ file }) => roomOf(file) === room);
	const hung = own.filter(({ id }) => known.hung.includes(id));
	const dead = own.filter(({ id }) => id in known.killed || known.hung.includes(id));
	const alive = own.filter((mutant) => !dead.includes(mutant));
	const same = alive.filter((mutant) => EQUIVALENT.has(nameOf(mutant)));
	const found = alive
		.filter((mutant) => !same.includes(mutant))
		.map((m) => `${known.reached.includes(m.id) ? 'lives' : 'not reached'}: ${nameOf(m)}`);
	const percent = ((100 * dead.length) / Math.max(own.length - same.length, 1)).toFixed(1);
	return {
		what: `mutants of ${room}`,
		tried: own.length,
		survived: alive.length,
		found,
		notes: [
			`${dead.length} killed, ${hung.length} of them by never ending; ${same.length} change nothing that can be seen; ${percent} % of the others killed`,
			...same.map(
				(mutant) => `changes nothing: ${nameOf(mutant)}: ${EQUIVALENT.get(nameOf(mutant))}`,
			),
		],
		notCovered: `faults of more than one place, words; ${known.left.length} long tests were not run with mutants`,
	};
}
