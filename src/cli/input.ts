import { readFileSync, statSync } from 'node:fs';
import { LARGEST_FILE } from '../lib/job';
import { Usage } from './usage';

/** The text of a file. A file that is not there, is a folder or is far too large is unreadable. */
export function readText(file: string): string {
	try {
		const { size } = statSync(file);
		if (size > 4 * LARGEST_FILE)
			throw new Usage(`${file} is too large: ${Math.ceil(size / 1e6)} MB.`);
		return utf8(readFileSync(file), file);
	} catch (error) {
		if (error instanceof Usage) throw error;
		throw new Usage(`${file} cannot be read: ${reason(error)}.`);
	}
}

/** All of standard input. */
export async function readStdin(): Promise<string> {
	const chunks: Buffer[] = [];
	let size = 0;
	for await (const chunk of process.stdin) {
		chunks.push(chunk as Buffer);
		size += (chunk as Buffer).length;
		if (size > 4 * LARGEST_FILE) throw new Usage('Standard input is too large.');
	}
	return utf8(Buffer.concat(chunks), 'Standard input');
}

function utf8(bytes: Uint8Array, name: string): string {
	try {
		return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
	} catch {
		throw new Usage(`${name} is no UTF-8 text.`);
	}
}

function reason(error: unknown): string {
	const code = (error as NodeJS.ErrnoException).code;
	const words: Record<string, string> = {
		ENOENT: 'there is no such file',
		EISDIR: 'it is a folder',
		EACCES: 'it may not be opened',
	};
	return words[code ?? ''] ?? String(code ?? error);
}
