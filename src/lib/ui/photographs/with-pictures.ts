import { picturesNamed, type JobFile, takeOutPictures, withPictures } from '../../job';
import type { Store } from '../../store';
import { saveJob } from '../files';
import type { Desk, DeskOpening } from '../state';

/** Hands out a job as a file that carries its pictures along; in words what it does not carry. */
export async function saveWithPictures(
	file: JobFile,
	store: Pick<Store, 'updatesAfter'>,
): Promise<string> {
	const named = picturesNamed(file);
	if (named.length === 0) {
		saveJob(file);
		return '';
	}
	const here = await hereOf(store, named).catch(() => new Map<string, Uint8Array>());
	saveJob(withPictures(file, here));
	const missing = named.length - here.size;
	return missing === 0
		? ''
		: `The file carries ${here.size} of ${named.length} photographs: the others are not in this browser. It names them, and the planner says so in their place.`;
}

async function hereOf(
	store: Pick<Store, 'updatesAfter'>,
	named: readonly string[],
): Promise<ReadonlyMap<string, Uint8Array>> {
	const { picturesHere } = await import('../../store/pictures/pictures-here');
	return picturesHere(store, named);
}

/** Opens a job read from a file; the pictures it carries go where pictures are kept. */
export async function openWithPictures(desk: Desk, opening: DeskOpening): Promise<void> {
	const { file, pictures, torn } = takeOutPictures(opening.file);
	await desk.open({ ...opening, file });
	const lost = torn.length;
	if (lost > 0)
		desk.notice = `${lost === 1 ? 'One photograph' : `${lost} photographs`} in the file cannot be read; a box says so in its place. Everything else was opened.`;
	if (pictures.size === 0) return;
	const [{ shelf }, { putPicture }] = await Promise.all([
		desk.documents(),
		import('../../store/pictures/kept-pictures'),
	]);
	const put = await Promise.allSettled([...pictures.values()].map((p) => putPicture(shelf, p)));
	const failed = put.filter(({ status }) => status === 'rejected').length;
	if (failed > 0)
		desk.notice = `${failed} of ${put.length} photographs in the file could not be kept in this browser: make room, then open the file again.`;
	desk.shared.sharing?.carrier.look();
}
