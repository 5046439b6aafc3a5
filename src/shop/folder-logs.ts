import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { isDocName, type ShopStanding } from '../lib/store';
import type { DocumentLog, DocumentLogs, LogEntry } from './keeping';
import { readLog, UpdateLog } from './update-log';

const ENDING = '.log';

/** A file a document, in one folder. One process at a time. */
export class FolderLogs implements DocumentLogs {
	/** There is no other server. */
	onMoved: DocumentLogs['onMoved'] = () => undefined;
	readonly #folder: string;

	constructor(folder: string) {
		this.#folder = folder;
	}

	/** Rejects when the folder cannot be read. */
	async standings(): Promise<ReadonlyMap<string, ShopStanding>> {
		const standings = new Map<string, ShopStanding>();
		for (const file of await readdir(this.#folder)) {
			const doc = docOf(file);
			if (doc === null) continue;
			const last = (await readLog(join(this.#folder, file))).entries.at(-1);
			if (last) standings.set(doc, { mark: last.mark, at: last.at });
		}
		return standings;
	}

	async open(doc: string): Promise<{ log: DocumentLog; entries: readonly LogEntry[] }> {
		const { log, contents } = await UpdateLog.open(join(this.#folder, fileOf(doc)));
		return { log, entries: contents.entries };
	}
}

const fileOf = (doc: string): string => `${doc.replace(' ', '_')}${ENDING}`;

/** Null for a file that is none of ours. */
function docOf(file: string): string | null {
	if (!file.endsWith(ENDING)) return null;
	const doc = file.slice(0, -ENDING.length).replace('_', ' ');
	return isDocName(doc) ? doc : null;
}
