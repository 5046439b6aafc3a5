import { spawn } from 'node:child_process';
import { nth } from '../../lib/measure';
import { type EffortLimit, USUAL_EFFORT } from './effort';

/** The answer of `nest`, as printed. */
export interface NestAnswer {
	readonly proven: boolean;
	readonly effort: number;
	readonly unplaced: readonly { readonly count: number }[];
	readonly seconds: number;
	/** Of a roll. */
	readonly length?: number;
	readonly pieces?: readonly { readonly id: string; x: number; y: number; turn: number }[];
	/** Of sheets. */
	readonly cost?: number;
	readonly layouts?: readonly unknown[];
}

/** Solves a problem with a seed and a budget of its own; null when it came to no answer. */
export type NestHand = (problem: object, patience: EffortLimit) => Promise<NestAnswer | null>;

/**
 * Steps of a search of outlines by several hands: after each all go on from the best layout any of
 * them has found. The first is long enough to find layouts that differ.
 */
const STEPS = [0.8, 0.2];
const ONE_STEP = [1];

/**
 * Several hands on one problem, each with a seed of its own, counted on from the asked one; effort
 * and seconds are those of each. The best answer wins, among equals that of the lowest seed: the
 * same seed, effort and number of hands always give the same. A hand that breaks is done without;
 * null when none answers.
 */
export async function nestTogether(
	hand: NestHand,
	count: number,
	problem: Readonly<Record<string, unknown>>,
	patience: EffortLimit,
): Promise<NestAnswer | null> {
	let best: NestAnswer | null = null;
	let [effort, seconds] = [0, 0];
	const steps = hasOutlines(problem) ? STEPS : ONE_STEP;
	for (const [step, share] of steps.entries()) {
		const given: object = { ...problem, ...goingOn(best) };
		const ask = (i: number): ReturnType<NestHand> =>
			hand(given, part(patience, share, step * count + i));
		const answers = await Promise.all(Array.from({ length: count }, (_, i) => ask(i)));
		const found = answers.filter((one) => one !== null);
		best = found.reduce<NestAnswer | null>((a, b) => (a && !isBetter(b, a) ? a : b), best);
		effort += found.reduce((sum, one) => sum + one.effort, 0);
		seconds += Math.max(0, ...found.map((one) => one.seconds));
		if (best === null || best.proven) break;
	}
	return best && { ...best, effort, seconds: Math.round(seconds * 1000) / 1000 };
}

function hasOutlines({ nest, pieces }: Readonly<Record<string, unknown>>): boolean {
	const shaped = (piece: unknown): boolean =>
		typeof piece === 'object' && piece !== null && 'outline' in piece;
	return nest === 'roll' && Array.isArray(pieces) && pieces.some(shaped);
}

function goingOn(best: NestAnswer | null): object {
	if (!best?.pieces || best.unplaced.length > 0) return {};
	return { start: best.pieces.map(({ id, x, y, turn }) => ({ id, x, y, turn })) };
}

function part({ seed, effort, seconds }: EffortLimit, share: number, further: number): EffortLimit {
	const most = effort ?? (seconds === null ? USUAL_EFFORT : null);
	return {
		seed: (seed + further) >>> 0,
		effort: most === null ? null : Math.ceil(most * share),
		seconds: seconds === null ? null : seconds * share,
	};
}

/** Less left over; then shorter, or cheaper and fewer sheets. */
function isBetter(a: NestAnswer, b: NestAnswer): boolean {
	const [mine, other] = [standing(a), standing(b)];
	const at = mine.findIndex((n, i) => n !== other[i]);
	return at >= 0 && nth(mine, at) < nth(other, at);
}

const standing = ({ unplaced, length = 0, cost = 0, layouts = [] }: NestAnswer): number[] => [
	unplaced.reduce((sum, { count }) => sum + count, 0),
	length,
	cost,
	layouts.length,
];

/** This very command in a process of its own: each has a core to itself. */
export const ownProcess: NestHand = (problem, { seed, effort, seconds }) =>
	new Promise((resolve) => {
		const limits = [
			...['--seed', `${seed}`],
			...(effort === null ? [] : ['--effort', `${effort}`]),
			...(seconds === null ? [] : ['--seconds', `${seconds}`]),
		];
		const script = [...process.execArgv, process.argv[1] ?? ''];
		const child = spawn(process.execPath, [...script, 'nest', '-', ...limits], {
			stdio: ['pipe', 'pipe', 'inherit'],
		});
		const out: Buffer[] = [];
		child.stdout.on('data', (chunk: Buffer) => out.push(chunk));
		child.stdin.on('error', () => {}); // it ended before it had read all
		child.on('error', () => resolve(null));
		child.on('close', (code) =>
			resolve(code === 0 ? (JSON.parse(Buffer.concat(out).toString()) as NestAnswer) : null),
		);
		child.stdin.end(JSON.stringify(problem));
	});
