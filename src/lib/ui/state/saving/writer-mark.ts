import { pageStorage } from './page-storage';

/*
 * What a window did it may take back, after a reload too: its mark is put down when the page goes
 * and taken up by the page that comes. It lies nowhere in between, so that a tab that is doubled
 * begins with a mark of its own; and one that was closed leaves its mark to the next to open.
 */

const KEY = 'kerf-and-nap window';

export function takeWriterMark(): string {
	for (const kind of ['sessionStorage', 'localStorage'] as const) {
		const mark = taken(pageStorage(kind));
		if (mark !== null) return mark;
	}
	return Array.from(crypto.getRandomValues(new Uint8Array(8)), (n) => n.toString(36)).join('');
}

export function leaveWriterMark(mark: string): void {
	for (const kind of ['sessionStorage', 'localStorage'] as const) {
		try {
			pageStorage(kind)?.setItem(KEY, mark);
		} catch {
			// Then what was done before the reload cannot be taken back after it.
		}
	}
}

function taken(storage: Storage | null): string | null {
	try {
		const mark = storage?.getItem(KEY) ?? null;
		storage?.removeItem(KEY);
		return mark;
	} catch {
		return null;
	}
}
