import { createHash } from 'node:crypto';
import { type FileHandle, open, readFile, rename, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { type DocumentLog, type LogEntry, NO_MARK } from './keeping';

/*
 * The updates of one document, one after the other in one file: length, check, mark, time, bytes.
 * An entry is in the file, and the disk has been told to keep it, before anybody is told so. What
 * a crash leaves half written at the end was never said to be kept.
 */

const CHECK = 8;
const HEAD = 4 + CHECK + 8 + 8;
/** Entries of a file before they are made into one. */
const MANY = 300;

interface Waiting {
	readonly bytes: Uint8Array;
	readonly at: number;
	readonly kept: (entry: LogEntry) => void;
	readonly failed: (fault: unknown) => void;
}

/** What a file holds, and up to where it is whole. */
export interface LogContents {
	readonly entries: readonly LogEntry[];
	readonly size: number;
	/** What stands behind the last whole entry. */
	readonly torn: Uint8Array;
}

export async function readLog(path: string): Promise<LogContents> {
	const file = await readFile(path).catch((fault: NodeJS.ErrnoException) => {
		if (fault.code === 'ENOENT') return Buffer.alloc(0);
		throw fault;
	});
	const entries: LogEntry[] = [];
	let size = 0;
	for (let entry = entryAt(file, 0); entry; entry = entryAt(file, size)) {
		entries.push(entry);
		size += HEAD + entry.bytes.length;
	}
	return { entries, size, torn: file.subarray(size) };
}

function entryAt(file: Buffer, at: number): LogEntry | null {
	if (at + HEAD > file.length) return null;
	const end = at + HEAD + file.readUInt32BE(at);
	if (end > file.length) return null;
	const told = file.subarray(at + 4 + CHECK, end);
	if (!checkOf(told).equals(file.subarray(at + 4, at + 4 + CHECK))) return null;
	const mark = told.subarray(0, 8).toString('hex');
	return { mark, at: told.readDoubleBE(8), bytes: new Uint8Array(told.subarray(16)) };
}

function written({ mark, at, bytes }: LogEntry): Buffer {
	const entry = Buffer.alloc(HEAD + bytes.length);
	entry.writeUInt32BE(bytes.length, 0);
	entry.write(mark, 4 + CHECK, 'hex');
	entry.writeDoubleBE(at, 4 + CHECK + 8);
	entry.set(bytes, HEAD);
	checkOf(entry.subarray(4 + CHECK)).copy(entry, 4);
	return entry;
}

const hashOf = (...parts: readonly (string | Uint8Array)[]): Buffer => {
	const hash = createHash('sha256');
	for (const part of parts) hash.update(part);
	return hash.digest().subarray(0, CHECK);
};
const checkOf = (told: Uint8Array): Buffer => hashOf(told);
/** Tells of all that went before too: two histories never come to the same mark. */
const markAfter = (mark: string, bytes: Uint8Array): string => hashOf(mark, bytes).toString('hex');

/** The file of one document, open for adding to it. */
export class UpdateLog implements DocumentLog {
	#file: FileHandle;
	readonly #path: string;
	#size: number;
	#mark: string;
	#at: number;
	#entries: number;
	#queue: Waiting[] = [];
	#running: Promise<void> | null = null;
	/** Told as soon as the disk has it. */
	onKept: DocumentLog['onKept'] = () => undefined;

	private constructor(path: string, file: FileHandle, { entries, size }: LogContents) {
		this.#path = path;
		this.#file = file;
		this.#size = size;
		const last = entries.at(-1);
		this.#mark = last?.mark ?? NO_MARK;
		this.#at = last?.at ?? 0;
		this.#entries = entries.length;
	}

	/** Opens the file, or makes it; a torn end is put beside it and cut off. */
	static async open(path: string): Promise<{ log: UpdateLog; contents: LogContents }> {
		const contents = await readLog(path);
		if (contents.torn.length > 0) await writeFile(`${path}.torn-${Date.now()}`, contents.torn);
		const isNew = contents.size === 0 && contents.torn.length === 0;
		const file = await open(path, isNew ? 'a+' : 'r+', 0o600);
		const log = new UpdateLog(path, isNew ? await reopened(path, file) : file, contents);
		await log.#file.truncate(contents.size);
		return { log, contents };
	}

	get size(): number {
		return this.#size;
	}

	get isLong(): boolean {
		return this.#entries >= MANY;
	}

	/** Kept is what the disk has. */
	append(bytes: Uint8Array, at = Date.now()): Promise<LogEntry> {
		return new Promise((kept, failed) => {
			this.#queue.push({ bytes, at, kept, failed });
			this.#running ??= this.#run();
		});
	}

	async compact(whole: () => Uint8Array): Promise<void> {
		while (this.#running) await this.#running;
		const done = this.#replace(whole());
		this.#running = done
			.catch(() => undefined)
			.then(() => {
				this.#running = null;
				if (this.#queue.length > 0) this.#running = this.#run();
			});
		await done;
	}

	async #replace(whole: Uint8Array): Promise<void> {
		const entry = written({ mark: this.#mark, at: this.#at, bytes: whole });
		const beside = `${this.#path}.new`;
		const file = await open(beside, 'w+', 0o600);
		try {
			await file.writeFile(entry);
			await file.datasync();
			await rename(beside, this.#path);
		} catch (fault) {
			await file.close();
			throw fault;
		}
		await keepFolder(this.#path);
		await this.#file.close();
		this.#file = file;
		this.#size = entry.length;
		this.#entries = 1;
	}

	async close(): Promise<void> {
		while (this.#running) await this.#running;
		await this.#file.close();
	}

	/** All that came while the disk was busy goes in one go. */
	async #run(): Promise<void> {
		while (this.#queue.length > 0) {
			const batch = this.#queue.splice(0);
			try {
				const entries = await this.#write(batch);
				batch.forEach(({ kept }, i) => {
					const entry = entries[i];
					if (!entry) return;
					this.onKept(entry, 'here');
					kept(entry);
				});
			} catch (fault) {
				for (const { failed } of batch) failed(fault);
			}
		}
		this.#running = null;
	}

	async #write(batch: readonly Waiting[]): Promise<LogEntry[]> {
		let mark = this.#mark;
		const entries = batch.map(({ bytes, at }) => ({
			bytes,
			at,
			mark: (mark = markAfter(mark, bytes)),
		}));
		const all = Buffer.concat(entries.map(written));
		try {
			let done = 0;
			while (done < all.length) {
				const { bytesWritten } = await this.#file.write(
					all,
					done,
					all.length - done,
					this.#size + done,
				);
				done += bytesWritten;
			}
			await this.#file.datasync();
		} catch (fault) {
			await this.#file.truncate(this.#size).catch(() => undefined);
			throw fault;
		}
		this.#size += all.length;
		this.#entries += entries.length;
		this.#at = entries.at(-1)?.at ?? this.#at;
		this.#mark = mark;
		return entries;
	}
}

/** A file opened for appending writes nowhere else: once it is there it is opened anew. */
async function reopened(path: string, file: FileHandle): Promise<FileHandle> {
	await file.close();
	await keepFolder(path);
	return open(path, 'r+');
}

/** That a file lies in a folder is for the folder to keep. Not every system knows how. */
export async function keepFolder(path: string): Promise<void> {
	try {
		const folder = await open(dirname(path), 'r');
		await folder.sync().finally(() => folder.close());
	} catch {
		// Then the system keeps it in its own time.
	}
}
