import type { Length } from '../measure';

/*
 * What is cut stays as it was, whatever its design becomes. What it was is kept as marks, one for
 * each thing that makes a cut piece wrong.
 */

/** What of a thing each mark is made of. */
export type Witnesses<T, K extends string> = Readonly<Record<K, (thing: T) => unknown>>;

/** The marks of a thing as it is now. */
export function asMade<T, K extends string>(said: Witnesses<T, K>, thing: T): Record<K, string> {
	const keys = Object.keys(said) as K[];
	return Object.fromEntries(keys.map((key) => [key, shortMarkOf(said[key](thing))])) as Record<
		K,
		string
	>;
}

interface Sized {
	readonly length: Length;
	readonly width: Length;
}

/**
 * What of a thing is another now than where it was laid, in words: 'size', 'bevels'. What was kept
 * before there were marks tells its size alone.
 */
export function changesOf<K extends string>(
	thing: Sized,
	placed: Sized & { readonly turn: number },
	marks: {
		readonly was: Readonly<Record<K, string>> | undefined;
		readonly now: Readonly<Record<K, string>>;
		readonly words: Readonly<Record<K, string>>;
	},
): string[] {
	const { turn, length: along, width: across } = placed;
	const [length, width] = turn % 180 === 0 ? [along, across] : [across, along];
	const { was, now, words } = marks;
	const others = was ? (Object.keys(words) as K[]).filter((key) => was[key] !== now[key]) : [];
	const isSized = thing.length === length && thing.width === width;
	return [...(isSized ? [] : ['size']), ...others.map((key) => words[key])];
}

/**
 * 32 bits of a value as JSON (FNV-1a, offset basis and prime as published), the same on any
 * machine: enough for what one job holds.
 */
export function shortMarkOf(value: unknown): string {
	let hash = 0x811c9dc5;
	for (const letter of JSON.stringify(value ?? null))
		hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 0x01000193) >>> 0;
	return hash.toString(36);
}
