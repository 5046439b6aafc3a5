import 'fake-indexeddb/auto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { putPicture, usePicture } from '../../src/lib/store/pictures/kept-pictures';
import { pictureDocument } from '../../src/lib/store/pictures/picture-document';
import { ShopDocuments } from '../../src/shop/documents';
import { FolderLogs } from '../../src/shop/folder-logs';
import { jpeg, photographOf, withCamera } from '../job/photographs/made-pictures';
import { secret, shop, until } from './each-shop';
import { adds, has } from './photographing';
import { linkFor } from './shop';

test('a photograph of one device is on the others, in hand or not', async () => {
	const desk = await shop.device(secret);
	const saw = await shop.device(secret);
	await adds(desk, 'j', jpeg(64, 48, 1));
	await until(async () => expect(await has(saw, jpeg(64, 48, 1))).toBe(true));
	// The other has the job open, and looks at a picture that nobody has brought yet.
	const late = jpeg(64, 48, 2);
	await saw.open('j');
	let came: Uint8Array | null = null;
	const used = await usePicture(saw.shelf, photographOf(late).picture, (bytes) => (came = bytes));
	expect(used.bytes).toBeNull();
	await adds(desk, 'j', late);
	await until(() => expect(came).toEqual(late));
	used.giveBack();
	await until(async () => expect(await has(saw, late)).toBe(true));
});

test('what was added without the network, or was lost here, is brought when it is back', async () => {
	const desk = await shop.device(secret);
	desk.away();
	await adds(desk, 'j', jpeg(64, 48, 3));
	const saw = await shop.device(secret);
	desk.back();
	await until(async () => expect(await has(saw, jpeg(64, 48, 3))).toBe(true));
	// A device that has lost its copy asks again.
	const { updates, ...rest } = await saw.store.everything();
	const left = updates.filter(({ doc }) => !doc.startsWith('picture'));
	await saw.store.putEverything({ ...rest, updates: left }, 'replace');
	expect(await has(saw, jpeg(64, 48, 3))).toBe(false);
	saw.sharing.carrier.look();
	await until(async () => expect(await has(saw, jpeg(64, 48, 3))).toBe(true));
});

test('whoever may only look brings none into the shop', async () => {
	const desk = await shop.device(secret);
	await until(() => expect(desk.sharing.link.state.kind).toBe('joined'));
	const looker = await shop.device(await linkFor(desk, 'look'));
	await putPicture(looker.shelf, jpeg(64, 48, 4));
	const used = await usePicture(
		looker.shelf,
		photographOf(jpeg(64, 48, 4)).picture,
		() => undefined,
	);
	await adds(desk, 'j', jpeg(64, 48, 5)); // by now the shop has heard whatever it would
	await until(async () => expect(await has(looker, jpeg(64, 48, 5))).toBe(true));
	const there = await usePicture(
		desk.shelf,
		photographOf(jpeg(64, 48, 4)).picture,
		() => undefined,
	);
	await desk.sharing.link.inStep(`picture ${photographOf(jpeg(64, 48, 4)).picture}`);
	expect(there.bytes).toBeNull();
	expect(await has(desk, jpeg(64, 48, 4))).toBe(false);
	used.giveBack();
	there.giveBack();
});

test('a device whose link is withdrawn keeps its own, and brings none into the shop', async () => {
	const desk = await shop.device(secret);
	await until(() => expect(desk.sharing.link.state.kind).toBe('joined'));
	const phone = await shop.device(await linkFor(desk, 'work'));
	await until(() => expect(phone.sharing.link.state.kind).toBe('joined'));
	desk.sharing.link.say({ say: 'withdraw', id: phone.sharing.link.link });
	await until(() => expect(phone.sharing.link.state).toMatchObject({ why: 'withdrawn' }));
	await adds(phone, 'j', jpeg(64, 48, 8));
	await adds(desk, 'j', jpeg(64, 48, 9)); // by now the shop has heard whatever it would
	const { picture } = photographOf(jpeg(64, 48, 8));
	const there = await usePicture(desk.shelf, picture, () => undefined);
	await desk.sharing.link.inStep(`picture ${picture}`);
	expect(there.bytes).toBeNull();
	there.giveBack();
	expect(await has(phone, jpeg(64, 48, 8))).toBe(true);
	expect(await has(desk, jpeg(64, 48, 8))).toBe(false);
	expect((await desk.open('j')).file.photographs).toEqual([photographOf(jpeg(64, 48, 9))]);
});

test('the shop keeps nothing under the name of a picture but that very picture', async () => {
	const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-pictures-'));
	try {
		const documents = await ShopDocuments.in(new FolderLogs(folder));
		const { doc, update } = pictureDocument(jpeg(64, 48, 6));
		await documents.use(doc);
		for (const bad of [
			update.slice(0, -4),
			pictureDocument(jpeg(64, 48, 7)).update,
			pictureDocument(withCamera(jpeg(64, 48, 6))).update,
		])
			expect(await documents.add(doc, bad)).toMatchObject({ kept: false, why: 'unreadable' });
		expect(await documents.add(doc, update)).toMatchObject({ kept: true, isNew: true });
		expect(await documents.add(doc, update)).toMatchObject({ kept: true, isNew: false });
		await documents.close();
		const again = await ShopDocuments.in(new FolderLogs(folder));
		expect(again.list().map(([name]) => name)).toEqual([doc]);
		await again.close();
	} finally {
		rmSync(folder, { recursive: true, force: true });
	}
});
