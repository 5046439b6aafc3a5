import { goto } from '$app/navigation';
import { resolve } from '$app/paths';
import { tableText } from '../../job';
import { keptTexts } from '../table';
import type { Desk } from '../state';
import { fromText } from './open-file';

/** A job file is opened; a table of parts is brought to the open job, to be looked through. */
export async function openDropped(file: File, desk: Desk): Promise<void> {
	if (/\.(csv|tsv|txt)$/i.test(file.name)) {
		keptTexts.put(desk.id, tableText(new Uint8Array(await file.arrayBuffer())));
		return goto(resolve('/#build/parts'));
	}
	const read = fromText(await file.text(), file.name);
	if ('refused' in read) desk.notice = read.refused.join(' ');
	else {
		const { openWithPictures } = await import('../photographs/with-pictures');
		await openWithPictures(desk, read.opening);
		await goto(resolve('/#build'));
	}
}
