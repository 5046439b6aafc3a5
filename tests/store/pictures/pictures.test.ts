import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import { openDexieStore } from '../../../src/lib/store/database/dexie-store';
import type { Store } from '../../../src/lib/store/database/store';
import { SharedDocument } from '../../../src/lib/store/document/shared-document';
import { openJob } from '../../../src/lib/store/hand/open-job';
import { docOfPicture } from '../../../src/lib/store/database/records';
import { Shelf } from '../../../src/lib/store/keeping/shelf';
import { backup, readBackup } from '../../../src/lib/store/keepsake/backup';
import { restore } from '../../../src/lib/store/keepsake/restore';
import { keepRevision } from '../../../src/lib/store/keepsake/revisions';
import { emptyTrash, throwAway } from '../../../src/lib/store/keepsake/trash';
import { putPicture, usePicture } from '../../../src/lib/store/pictures/kept-pictures';
import { picturesHere } from '../../../src/lib/store/pictures/pictures-here';
import { makesPicture, pictureDocument } from '../../../src/lib/store/pictures/picture-document';
import { jpeg, photographOf, withCamera } from '../../job/photographs/made-pictures';

let [store, other]: Store[] = [];
let count = 0;
beforeEach(() => {
	store = openDexieStore(`pictures-${count++}`);
	other = openDexieStore(`pictures-${count++}`);
});
afterEach(() => [store, other].forEach((each) => each!.close()));

const [one, two, three] = [jpeg(64, 48, 1), jpeg(64, 48, 2), jpeg(64, 48, 3)];
const hashOf = (picture: Uint8Array): string => photographOf(picture).picture;
const shelfOf = (on: Store): Shelf => new Shelf(on, { writer: 'me', channel: `p ${count}` });
const hereOf = async (on: Store, ...pictures: readonly Uint8Array[]): Promise<number[]> => {
	const here = await picturesHere(on, pictures.map(hashOf));
	return pictures.flatMap((picture, i) =>
		Buffer.from(here.get(hashOf(picture)) ?? []).equals(Buffer.from(picture)) ? [i] : [],
	);
};

/** A job that names these pictures, kept; and its hand, for more. */
async function jobOf(on: Store, id: string, ...pictures: readonly Uint8Array[]) {
	const shelf = shelfOf(on);
	for (const picture of pictures) await putPicture(shelf, picture);
	const photographs = pictures.map((picture) => photographOf(picture));
	const file = { name: id, photographs } as JobFile;
	const hand = await openJob(shelf, { id, file, sharesRack: false }, () => false);
	await shelf.settled();
	return { hand, shelf };
}

describe('a picture', () => {
	it('is the same document whoever makes it, and once however often it is put', async () => {
		expect(pictureDocument(one)).toEqual(pictureDocument(Uint8Array.from(one)));
		const shelf = shelfOf(store!);
		expect(await putPicture(shelf, one)).toBe(hashOf(one));
		await putPicture(shelf, one);
		const { updates } = await store!.everything();
		expect(updates.map(({ doc }) => doc)).toEqual([docOfPicture(hashOf(one))]);
		const used = await usePicture(shelf, hashOf(one), () => undefined);
		expect(used.bytes).toEqual(one);
		used.giveBack();
		expect((await usePicture(shelf, hashOf(two), () => undefined)).bytes).toBeNull();
		shelf.close();
	});

	it('is none under another name, torn, with more in it, or edited since', () => {
		const { doc, update } = pictureDocument(one);
		expect(makesPicture(doc, update)).toBe(true);
		expect(makesPicture('job a', update)).toBe(false);
		expect(makesPicture(docOfPicture(hashOf(two)), update)).toBe(false);
		expect(makesPicture(doc, update.slice(0, -3))).toBe(false);
		const camera = pictureDocument(withCamera(one));
		expect(makesPicture(camera.doc, camera.update)).toBe(false);
		const more = new SharedDocument();
		more.take(update);
		more.put('map', 'key', '=1');
		expect(makesPicture(doc, more.whole())).toBe(false);
	});
});

describe('photographs in a job', () => {
	it('added and taken out on two devices are all there but those taken out', async () => {
		const { hand, shelf } = await jobOf(store!, 'j', one);
		const before = await store!.everything();
		await other!.putEverything(before, 'replace');
		const far = shelfOf(other!);
		const record = (await other!.job('j'))!;
		const away = { id: 'j', file: record.file as JobFile, sharesRack: false, record };
		const second = await openJob(far, away, () => false);
		const add = (picture: Uint8Array) => (file: JobFile) => ({
			...file,
			photographs: [...(file.photographs ?? []), photographOf(picture)],
		});
		hand.change(add(two), 'photograph', null);
		second.change(add(three), 'photograph', null);
		second.change((file) => ({ ...file, photographs: file.photographs!.slice(1) }), 'out', null);
		// Both add the same one: it stands there twice, and the reader says so.
		hand.change(add(three), 'photograph', null);
		await Promise.all([shelf.settled(), far.settled()]);
		for (const [from, to] of [[store!, far] as const, [other!, shelf] as const])
			for (const { bytes } of await from.updatesAfter('job j', 0)) to.keeper('job j').takeIn(bytes);
		await Promise.resolve();
		const named = (file: JobFile) => file.photographs!.map(({ picture }) => picture).sort();
		const all = [hashOf(two), hashOf(three), hashOf(three)].sort();
		expect([named(hand.file), named(second.file)]).toEqual([all, all]);
		[shelf, far].forEach((each) => each.close());
	});

	it('go with the backup and come back, in place of all and beside others', async () => {
		const { shelf } = await jobOf(store!, 'j', one, two);
		await store!.setThing(
			'picture j panels/0',
			new Blob([three as Uint8Array<ArrayBuffer>], { type: 'image/jpeg' }),
		);
		shelf.close();
		const text = await backup(store!, 1);
		for (const way of ['replace', 'beside'] as const) {
			const into = way === 'replace' ? store! : other!;
			if (way === 'replace')
				await into.putEverything(
					{ jobs: [], things: [], updates: [], steps: [], revisions: [] },
					'replace',
				);
			const read = readBackup(text);
			if ('refused' in read) throw new Error(read.refused);
			await restore(into, read.everything, way, () => 'new');
			expect(await hereOf(into, one, two)).toEqual([0, 1]);
			const traced = (await into.thing('picture j panels/0')) as Blob;
			expect(traced.type).toBe('image/jpeg');
			expect(new Uint8Array(await traced.arrayBuffer())).toEqual(three);
		}
		// Once more beside what is there already: nothing twice.
		const read = readBackup(text);
		if ('refused' in read) throw new Error(read.refused);
		await restore(other!, read.everything, 'beside', () => 'new');
		const docs = (await other!.everything()).updates.map(({ doc }) => doc);
		expect(docs.filter((doc) => doc === docOfPicture(hashOf(one)))).toHaveLength(1);
	});

	it('are let go of with the trash when no job, step or revision names them', async () => {
		const { hand, shelf } = await jobOf(store!, 'kept', one, two);
		const gone = await jobOf(store!, 'gone', one, three);
		gone.shelf.close();
		await putPicture(shelf, jpeg(64, 48, 9));
		hand.change((file) => ({ ...file, photographs: file.photographs!.slice(0, 1) }), 'out', null);
		await shelf.settled();
		await throwAway(store!, 'gone', 5);
		expect(await emptyTrash(store!, 5)).toEqual([]); // in the trash it may come back
		expect(await hereOf(store!, one, two, three, jpeg(64, 48, 9))).toEqual([0, 1, 2]);
		await emptyTrash(store!);
		// Two: what was taken out can still be undone.
		expect(await hereOf(store!, one, two, three)).toEqual([0, 1]);
		hand.undo();
		expect(hand.file.photographs).toHaveLength(2);
		shelf.close();
	});

	it('stay as long as a revision names them', async () => {
		const { shelf } = await jobOf(store!, 'j');
		await putPicture(shelf, one);
		const file = { photographs: [photographOf(one)] };
		await keepRevision(store!, 'j', { why: 'asked for', at: 1, file });
		await emptyTrash(store!);
		expect(await hereOf(store!, one)).toEqual([0]);
		shelf.close();
	});
});
