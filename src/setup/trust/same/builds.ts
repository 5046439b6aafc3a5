import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { build } from '../../build.js';
import { ROOT } from '../../tool.js';

/** Builds the app twice: how many files it is, and those that are not the same both times. */
export async function builtTwice(): Promise<{ files: number; differ: string[] }> {
	const [one, two] = [await built(), await built()];
	const names = [...new Set([...one.keys(), ...two.keys()])].sort();
	return { files: names.length, differ: names.filter((name) => one.get(name) !== two.get(name)) };
}

async function built(): Promise<Map<string, string>> {
	if ((await build()) !== 0) throw new Error('the app cannot be built');
	return digestsIn(join(ROOT, 'build'));
}

/** The digest of every file in the folder and those within, by its name. */
export function digestsIn(folder: string): Map<string, string> {
	const names = readdirSync(folder, { recursive: true, encoding: 'utf8' });
	const files = names.filter((name) => statSync(join(folder, name)).isFile());
	return new Map(files.map((name) => [name, digest(readFileSync(join(folder, name)))]));
}

/** SHA-256 in hexadecimal digits. */
export function digest(data: string | Uint8Array): string {
	return createHash('sha256').update(data).digest('hex');
}
