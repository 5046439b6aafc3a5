/** The browser's small storages, which some browsers refuse by throwing at their very name. */
export function pageStorage(kind: 'localStorage' | 'sessionStorage'): Storage | null {
	try {
		return globalThis[kind];
	} catch {
		return null;
	}
}
