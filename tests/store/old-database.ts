import { readFileSync } from 'node:fs';

interface Frozen {
	readonly version: number;
	readonly stores: Readonly<Record<string, { readonly keyPath: string; readonly index?: string }>>;
	readonly rows: Readonly<Record<string, readonly Record<string, unknown>[]>>;
}

export const FROZEN = JSON.parse(
	readFileSync(new URL('./old/version-1.json', import.meta.url), 'utf8'),
) as Frozen;

/** Makes a database as an old planner left it, by the browser's own means. */
export function makeOldDatabase(name: string, { version, stores, rows } = FROZEN): Promise<void> {
	return new Promise((resolve, reject) => {
		const request = indexedDB.open(name, version);
		request.onupgradeneeded = () => {
			for (const [table, { keyPath, index }] of Object.entries(stores)) {
				const made = request.result.createObjectStore(table, { keyPath });
				if (index) made.createIndex(index, index);
			}
		};
		request.onerror = () => reject(request.error ?? new Error('not made'));
		request.onsuccess = () => {
			const db = request.result;
			const change = db.transaction(Object.keys(stores), 'readwrite');
			for (const [table, list] of Object.entries(rows))
				for (const row of list) change.objectStore(table).put(row);
			change.oncomplete = () => {
				db.close();
				resolve();
			};
			change.onerror = () => reject(change.error ?? new Error('not filled'));
		};
	});
}
