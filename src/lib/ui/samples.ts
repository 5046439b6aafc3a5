import type { JobFile } from '../job';

/** The jobs that come with the planner, each fetched when it is opened. */
const files = import.meta.glob('../../../shared/jobs/*.json', { import: 'default' });

export const SAMPLES: readonly string[] = Object.keys(files)
	.map((path) => path.replace(/^.*\/(.+)\.json$/, '$1'))
	.sort();

/** Pictures that samples were traced over. */
const pictures: Readonly<Record<string, string>> = import.meta.glob('../../../shared/jobs/*.svg', {
	import: 'default',
	query: '?url',
	eager: true,
});

/** Where a sample's picture of that name is found; null for any other name. */
export const samplePicture = (name: string): string | null =>
	pictures[`../../../shared/jobs/${name}`] ?? null;

/** The one a newcomer finds open. */
export const FIRST_SAMPLE = 'camper-bench';

/** Throws `bug:` on a name that is not in SAMPLES. */
export async function sample(name: string): Promise<JobFile> {
	const load = files[`../../../shared/jobs/${name}.json`];
	if (!load) throw new Error(`bug: no sample ${name}`);
	return (await load()) as JobFile;
}
