import { valueAt } from '../job';

/** Hands the person a file to keep. */
export function download(name: string, type: string, content: BlobPart): void {
	const url = URL.createObjectURL(new Blob([content], { type }));
	const link = document.createElement('a');
	link.href = url;
	link.download = name;
	link.click();
	// The browser reads the file after this turn; taking the address away at once would leave it
	// with nothing.
	setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** A job as the file it opens from again, named after it. */
export function saveJob(file: unknown): void {
	const name = valueAt(file, ['name']);
	const title = typeof name === 'string' ? name : '';
	download(fileName(title, 'json'), 'application/json', JSON.stringify(file, null, '\t'));
}

/** Whatever stands in the database, for somebody who can make something of it. */
export function saveRaw(record: unknown, title: string): void {
	const text = JSON.stringify(record, null, '\t') ?? 'undefined';
	download(fileName(title, 'json'), 'application/json', text);
}

/**
 * A name any disk takes: 'Camper van, rear bench' -> 'camper-van-rear-bench'; 'job' when nothing of
 * it is left.
 */
export function plainName(title: string): string {
	const plain = title
		.normalize('NFKD')
		.toLowerCase()
		.replace(/[^\p{L}\p{N}]+/gu, '-')
		.replace(/^-|-$/g, '');
	return plain.slice(0, 60) || 'job';
}

export const fileName = (title: string, ending: string): string => `${plainName(title)}.${ending}`;
