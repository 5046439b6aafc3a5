import { parseArgs, type ParseArgsConfig } from 'node:util';
import { Usage } from './usage';

type Options = NonNullable<ParseArgsConfig['options']>;

/** The one file a command may be given, and its options; anything else is wrong usage. */
export function parse(args: readonly string[], options: Options) {
	const { values, files } = parseFiles(args, options);
	if (files.length > 1) throw new Usage(`Give one file, not ${files.length}.`);
	return { values, file: files[0] };
}

/** The files a command may be given, and its options. */
export function parseFiles(args: readonly string[], options: Options) {
	try {
		const { values, positionals } = parseArgs({ args: [...args], options, allowPositionals: true });
		return { values: values as Record<string, string | boolean | undefined>, files: positionals };
	} catch (error) {
		if (error instanceof Usage) throw error;
		throw new Usage(error instanceof Error ? error.message : String(error));
	}
}

/** A whole number of an option, or null when it is not given. */
export function wholeNumber(
	values: Record<string, string | boolean | undefined>,
	name: string,
	most: number,
): number | null {
	const text = values[name];
	if (text === undefined) return null;
	if (typeof text !== 'string' || !/^\d{1,15}$/.test(text) || Number(text) > most) {
		throw new Usage(`--${name} is "${String(text)}": give a whole number from 0 to ${most}.`);
	}
	return Number(text);
}

/** Seconds may have decimals. */
export function seconds(values: Record<string, string | boolean | undefined>): number | null {
	const text = values['seconds'];
	if (text === undefined) return null;
	const number = typeof text === 'string' && /^\d*\.?\d+$/.test(text) ? Number(text) : NaN;
	if (!(number > 0 && number <= 86_400)) {
		throw new Usage(`--seconds is "${String(text)}": give a number above 0, a day at most.`);
	}
	return number;
}
