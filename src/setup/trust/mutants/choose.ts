import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { nth } from '../../../lib/measure';
import { random } from '../../../lib/nest';
import { ROOT } from '../../tool.js';
import { mutantsOf, type Mutant, type Numbered } from './find';

/** The rooms, and how many of a hundred mutants are chosen from each. */
export const ROOMS: readonly (readonly [string, number])[] = [
	['src/lib/measure', 17],
	['src/lib/nest/audit', 17],
	['src/lib/design', 32],
	['src/lib/wrap', 19],
	['src/lib/estimate', 15],
];

/** Mutants of the rooms, drawn by the seed; numbered in the order of their places. */
export function chooseMutants(seed: number, count: number): Numbered[] {
	const chosen = ROOMS.flatMap(([room, share]) =>
		drawn(mutantsIn(room), Math.round((count * share) / 100), seed),
	);
	return chosen.map((mutant, id) => ({ ...mutant, id }));
}

export function mutantsIn(room: string): Mutant[] {
	return readdirSync(join(ROOT, room), { recursive: true, encoding: 'utf8' })
		.map((name) => `${room}/${name.replaceAll('\\', '/')}`)
		.filter((name) => name.endsWith('.ts') && !name.endsWith('/index.ts'))
		.sort()
		.flatMap((file) => mutantsOf(file, readFileSync(join(ROOT, file), 'utf8')));
}

function drawn(from: readonly Mutant[], count: number, seed: number): Mutant[] {
	const dice = random(seed);
	const order = from.map((_, i) => i);
	for (let i = order.length - 1; i > 0; i--) {
		const j = dice.int(i + 1);
		const kept = nth(order, i);
		order[i] = nth(order, j);
		order[j] = kept;
	}
	return order
		.slice(0, count)
		.sort((a, b) => a - b)
		.map((i) => nth(from, i));
}

/** The room a file is counted with. */
export function roomOf(file: string): string {
	return ROOMS.find(([room]) => file.startsWith(`${room}/`))?.[0] ?? file;
}
