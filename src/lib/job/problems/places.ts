import type { Path } from './problem';
/**
 * Where things stand in the file a person gave, by their mark. A faulty box is left out of the job
 * that was read, so the places in the job and in the file are not the same; a problem has to point
 * into the file.
 */
export interface Places {
	/** ['boxes', 2] for the box with this id; ['boxes', n] when the file shows no such id. */
	readonly of: (list: 'boxes' | 'panels' | 'parts' | 'runs', id: string, n: number) => Path;
}

export function placesIn(file: unknown): Places {
	return {
		of: (list, id, n) => {
			const found = entries(file, list).findIndex((entry) => markOf(entry) === id);
			return [list, found >= 0 ? found : n];
		},
	};
}

function entries(file: unknown, list: string): readonly unknown[] {
	const value = isRecord(file) ? file[list] : undefined;
	return Array.isArray(value) ? (value as unknown[]) : [];
}

function markOf(entry: unknown): unknown {
	return isRecord(entry) ? entry['id'] : undefined;
}

function isRecord(value: unknown): value is Record<string, unknown> {
	return typeof value === 'object' && value !== null;
}
