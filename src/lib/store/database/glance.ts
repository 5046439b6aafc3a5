import { NoStore } from './store';

/**
 * One row of the database, or undefined, without the library that writes it: the start needs no
 * more
 * than three rows, and that library is a fifth of the script it would wait for. Rejects when the
 * browser gives no database. A database that is not there yet is not made.
 */
export async function glance(database: string, table: string, key: string): Promise<unknown> {
	if (typeof indexedDB === 'undefined') throw new NoStore();
	const db = await opened(database);
	if (!db) return undefined;
	try {
		if (!db.objectStoreNames.contains(table)) return undefined;
		return await answerOf(db.transaction(table).objectStore(table).get(key));
	} finally {
		db.close();
	}
}

/** The version of the database as the browser counts it; 0 for none. */
export async function versionOf(database: string): Promise<number> {
	if (typeof indexedDB === 'undefined') throw new NoStore();
	const db = await opened(database);
	db?.close();
	return db?.version ?? 0;
}

/** In whatever version it is; null for none. */
function opened(name: string): Promise<IDBDatabase | null> {
	return new Promise((resolve, reject) => {
		const request = indexedDB.open(name);
		let isNew = false;
		request.onupgradeneeded = () => {
			isNew = true;
			request.transaction?.abort(); // so that it is not there after all
		};
		request.onsuccess = () => resolve(request.result);
		request.onerror = () => {
			if (isNew) resolve(null);
			else reject(request.error ?? new Error('The database cannot be opened.'));
		};
	});
}

function answerOf<T>(request: IDBRequest<T>): Promise<T> {
	return new Promise((resolve, reject) => {
		request.onsuccess = () => resolve(request.result);
		request.onerror = () => reject(request.error ?? new Error('The database does not answer.'));
	});
}
