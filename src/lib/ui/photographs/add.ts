import { MOST_PHOTOGRAPHS, type Photograph, sha256 } from '../../job';
import { type Desk, listAt } from '../state';
import { takeIn } from './take-in';

/** What came of photographs that were added. */
export interface PhotographsAdded {
	readonly count: number;
	/** In words, of each that was not: which, and why. */
	readonly refused: readonly string[];
}

/**
 * Adds photographs to the open job, one after the other: the picture is in the database before the
 * job names it.
 *
 * @param tell told how many have been looked at
 */
export async function addPhotographs(
	desk: Desk,
	files: readonly File[],
	kind: Photograph['kind'],
	tell: (done: number) => void,
): Promise<PhotographsAdded> {
	const { id } = desk;
	const refused: string[] = [];
	let count = 0;
	for (const [i, file] of files.entries()) {
		const why = desk.id === id ? await addOne(desk, file, kind) : OTHER_JOB;
		if (why === null) count++;
		else refused.push(`${file.name}: ${why}`);
		tell(i + 1);
	}
	desk.shared.sharing?.carrier.look();
	return { count, refused };
}

const OTHER_JOB = 'another job was opened meanwhile; add it there, or open this one again.';

/** Null when it was added. */
async function addOne(desk: Desk, file: File, kind: Photograph['kind']): Promise<string | null> {
	const { id } = desk;
	const taken = await takeIn(file);
	if ('refused' in taken) return taken.refused;
	const { bytes, width, height } = taken;
	const picture = sha256(bytes);
	const there = (listAt(desk.file, ['photographs']) as Partial<Photograph>[]).findIndex(
		(photograph) => photograph?.picture === picture,
	);
	if (there >= 0) return `this very photograph is in the job already, as number ${there + 1}.`;
	if (listAt(desk.file, ['photographs']).length >= MOST_PHOTOGRAPHS)
		return `a job holds ${MOST_PHOTOGRAPHS} photographs; take one out first.`;
	const [{ shelf }, { putPicture }] = await Promise.all([
		desk.documents(),
		import('../../store/pictures/kept-pictures'),
	]);
	try {
		await putPicture(shelf, bytes);
	} catch {
		return 'the database of this browser has not taken it, so it was not added. Make room, then add it again.';
	}
	if (desk.id !== id) return OTHER_JOB;
	const date = dayOf(new Date(file.lastModified));
	const photograph = { picture, shows: '', date, kind, width, height, bytes: bytes.length };
	desk.insert(['photographs'], photograph, 'photograph');
	// Whoever emptied the trash between the two has let go of a picture nothing named.
	await desk.settled();
	await putPicture(shelf, bytes).catch(() => undefined);
	return null;
}

/** The day here, as the fields of a date have it. */
function dayOf(date: Date): string {
	const two = (n: number): string => String(n).padStart(2, '0');
	return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}
