import type { Everything } from '../../store';
import { jobCount } from './record-words';

/** The name of a file of everything: of the day, so that several lie in order. */
export function backupName(at: Date): string {
	return `kerf-and-nap-everything-${at.toISOString().slice(0, 10)}.json`;
}

/** What there is, in words: '3 jobs, 1 of them thrown away, 12 earlier states'. */
export function contentsOf({ jobs, revisions, things }: Everything): string {
	const thrown = jobs.filter(({ thrown }) => thrown !== undefined).length;
	return [
		jobCount(jobs.length),
		...(thrown > 0 ? [`${thrown} of them thrown away`] : []),
		...(things.some(({ key }) => key === 'rack') ? ['the rack and the shop'] : []),
		...(revisions.length > 0
			? [`${revisions.length} earlier ${revisions.length === 1 ? 'state' : 'states'}`]
			: []),
	].join(', ');
}

/** Says where, what and what would be right of a file that is no backup. */
export function refusalOf(file: string, what: string): string {
	return `${file}: ${what} Nothing here was changed. Choose a file that “Save everything to a file” made; a single job is opened with “Open a file” at the top.`;
}

/** What came of putting a backup beside what was there. */
export function besideWords(inFile: number, come: number): string {
	const same = inFile - come;
	const left =
		same > 0 ? ` ${jobCount(same)} ${same === 1 ? 'was' : 'were'} here just the same.` : '';
	return `Brought back beside what was here: ${jobCount(come)}.${left}`;
}
