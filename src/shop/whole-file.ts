import { open, readFile, rename } from 'node:fs/promises';
import type { KeptValue } from './keeping';
import { keepFolder } from './update-log';

/** What a file of JSON holds; undefined where there is none. */
export async function readJson(path: string): Promise<unknown> {
	try {
		return JSON.parse(await readFile(path, 'utf8')) as unknown;
	} catch (fault) {
		if ((fault as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
		throw fault;
	}
}

/** Writes a value as JSON, whole or not at all, for nobody else to read. */
export const writeWhole = (path: string, value: unknown): Promise<void> =>
	writeWholeText(path, `${JSON.stringify(value, null, '\t')}\n`);

/** Writes a text, whole or not at all, for nobody else to read. */
export async function writeWholeText(path: string, text: string): Promise<void> {
	const file = await open(`${path}.new`, 'w', 0o600);
	try {
		await file.writeFile(text);
		await file.sync();
	} finally {
		await file.close();
	}
	await rename(`${path}.new`, path);
	await keepFolder(path);
}

/** A file of JSON that nobody else writes. */
export const valueIn = (path: string): KeptValue => ({
	read: () => readJson(path),
	write: async (value) => {
		await writeWhole(path, value);
		return true;
	},
	onChanged: () => undefined,
});
