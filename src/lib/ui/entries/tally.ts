import type { Entry } from './entry';

/** What a folded section holds, in a few words: '3', 'slanted face', 'none'. */
export function tally(entry: Entry, value: unknown): string {
	if (entry.kind === 'list')
		return Array.isArray(value) && value.length > 0 ? String(value.length) : 'none';
	if (entry.kind === 'kinds') return entry.ways.find((w) => w.is(value))?.label ?? 'none';
	if (entry.kind === 'boards') {
		const n = typeof value === 'object' && value !== null ? Object.keys(value).length : 0;
		return n > 0 ? String(n) : 'none';
	}
	return '';
}
