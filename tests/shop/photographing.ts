import type { JobFile } from '../../src/lib/job/job';
import { putPicture } from '../../src/lib/store/pictures/kept-pictures';
import { picturesHere } from '../../src/lib/store/pictures/pictures-here';
import { photographOf } from '../job/photographs/made-pictures';
import type { Device } from './shop';

/** Is that picture in the database of that device? */
export const has = async ({ store }: Device, picture: Uint8Array): Promise<boolean> =>
	(await picturesHere(store, [photographOf(picture).picture])).size === 1;

/** Adds a photograph to a job at that device, as the page does. */
export async function adds(device: Device, id: string, picture: Uint8Array): Promise<void> {
	await putPicture(device.shelf, picture);
	const hand = await device.open(id);
	const add = (file: JobFile) => ({
		...file,
		photographs: [...(file.photographs ?? []), photographOf(picture)],
	});
	hand.change(add, 'photograph', null);
	await device.shelf.settled();
	device.sharing.carrier.look();
}
