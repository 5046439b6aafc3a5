import { countingUp } from './places';
import { SharedDocument, type RegisterEdit } from './shared-document';
import { writeRegister } from './write-document';
import { readRegister } from './read-document';
import { TOP } from './names';

/** The register a job, or the shop, hangs from. */
const FILE = { map: TOP, key: 'file' } as const;

/** The plain file a document holds; undefined for none. */
export function fileIn(doc: SharedDocument): unknown {
	return readRegister(doc, FILE.map, FILE.key);
}

/** Brings a document from one plain file to another, as `writeRegister` does. */
export function writeFile(doc: SharedDocument, before: unknown, after: unknown): RegisterEdit[] {
	return writeRegister(doc, FILE, before, after);
}

/** Facts beside the file, such as whose rack a job draws on. */
export function factIn(doc: SharedDocument, name: string): unknown {
	return readRegister(doc, TOP, `fact ${name}`);
}

export function writeFact(doc: SharedDocument, name: string, value: unknown): RegisterEdit[] {
	const key = `fact ${name}`;
	return writeRegister(doc, { map: TOP, key }, undefined, value);
}

/**
 * The update that makes a document of a plain file. Always the same for the same file: two windows
 * or devices that take over the same old record have taken it over once.
 */
export function seedOf(file: unknown, facts: Readonly<Record<string, unknown>> = {}): Uint8Array {
	const doc = new SharedDocument(numberOf(JSON.stringify([file, facts]) ?? ''));
	writeRegister(doc, FILE, undefined, file, countingUp());
	for (const [name, value] of Object.entries(facts)) writeFact(doc, name, value);
	const seed = doc.whole();
	doc.close();
	return seed;
}

/** 32 bits of a text: FNV-1a, offset basis and prime as published (RFC 9923 gives both). */
function numberOf(text: string): number {
	let hash = 0x811c9dc5;
	for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
	return hash >>> 0;
}
