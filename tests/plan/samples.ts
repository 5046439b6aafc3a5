import { readdirSync, readFileSync } from 'node:fs';
import type { JobFile } from '../../src/lib/job/job';

const folder = new URL('../../shared/jobs/', import.meta.url);

/** Every sample job by its file name; a job put into the folder is a case at once. */
export const samples: readonly { readonly name: string; readonly file: JobFile }[] = readdirSync(
	folder,
)
	.filter((name) => name.endsWith('.json'))
	.sort()
	.map((name) => ({ name, file: sample(name) }));

export function sample(name: string): JobFile {
	return JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as JobFile;
}
