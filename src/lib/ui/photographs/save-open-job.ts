import type { Store } from '../../store';
import { saveJob } from '../files';
import type { Desk } from '../state';

/** Hands out the open job as a file, with its photographs; says so where it carries not all. */
export async function saveOpenJob(desk: Desk, store: Pick<Store, 'updatesAfter'>): Promise<void> {
	const { file } = desk;
	if (!Array.isArray(file.photographs) || file.photographs.length === 0) return saveJob(file);
	try {
		const { saveWithPictures } = await import('./with-pictures');
		const said = await saveWithPictures(file, store);
		if (said !== '') desk.notice = said;
	} catch {
		saveJob(file);
		desk.notice =
			'The file names its photographs and does not carry them: a part of the planner could not be fetched. Reload the page and save once more.';
	}
}
