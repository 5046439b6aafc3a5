import 'fake-indexeddb/auto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createClient } from '@redis/client';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import type { JobInHand } from '../../src/lib/store/hand/job-in-hand';
import type { Present } from '../../src/lib/store/sharing/words';
import { RawDevice } from '../../src/setup/trust/kills/raw-device';
import { freePort, RedisProcess } from '../../src/setup/trust/kills/redis-process';
import { SharedShop } from '../../src/shop/shared/shared-shop';
import { importsOf, sources, target } from '../house/sources';
import { jpeg, photographOf } from '../job/photographs/made-pictures';
import { adds, has } from './photographing';
import { type Device, linkFor, RACK, TestShop } from './shop';

/* One shop at two servers that share a store: a real one, killed and started again. */

let folder: string;
let redis: RedisProcess;
let one: TestShop;
let two: TestShop;
let secret: string;
beforeAll(async () => {
	folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-redis-'));
	redis = await RedisProcess.start(folder);
});
afterAll(async () => {
	await redis.kill();
	rmSync(folder, { recursive: true, force: true });
});

const until = (look: () => unknown): Promise<unknown> =>
	vi.waitFor(look, { timeout: 20_000, interval: 5 });
const joined = (device: Device) =>
	until(() => expect(device.sharing.link.state.kind).toBe('joined'));
const rename = (hand: JobInHand, name: string): void =>
	void hand.change((file) => ({ ...file, name }), 'name', null);
const note = (hand: JobInHand, notes: string): void =>
	void hand.change((file) => ({ ...file, notes }), 'notes', null);

/** Entries of a stream in the store. */
async function length(stream: string): Promise<number> {
	const client = await createClient({ url: redis.url }).connect();
	return client.xLen(stream).finally(() => client.destroy());
}

describe('two servers of one shop', () => {
	let n = 0;
	beforeEach(async () => {
		const name = `shop-${n++}`;
		[one, two] = [new TestShop(redis.url, name), new TestShop(redis.url, name)];
		await Promise.all([one.start(), two.start()]);
		secret = await one.owner();
	});
	afterEach(() => Promise.all([one.close(), two.close()]));

	test('what is typed at one is at the other, in jobs in hand and in those nobody has', async () => {
		const desk = await one.device(secret);
		const saw = await two.device(secret);
		const here = await desk.open('j');
		expect(here.file.shop).toEqual({ name: 'Ours' });
		rename(here, 'Camper');
		await until(async () => expect(await saw.store.job('j')).toMatchObject({ name: 'Camper' }));
		const there = await saw.open('j');
		note(there, 'measured');
		await until(() => expect(here.file).toMatchObject({ name: 'Camper', notes: 'measured' }));
		rename(here, 'Camper 2');
		note(there, 'measured twice');
		await until(() => expect(there.file).toMatchObject({ name: 'Camper 2' }));
		await until(() => expect(here.file).toEqual(there.file));
		there.undo();
		await until(() => expect(here.file).toMatchObject({ name: 'Camper 2', notes: 'measured' }));
	});

	test('a photograph taken at one is at the other, and stays with the shop without its device', async () => {
		const phone = await one.device(secret);
		const saw = await two.device(secret);
		await adds(phone, 'j', jpeg(64, 48, 1));
		await until(async () => expect(await has(saw, jpeg(64, 48, 1))).toBe(true));
		phone.away();
		saw.away();
		const later = await two.device(secret);
		await until(async () => expect(await has(later, jpeg(64, 48, 1))).toBe(true));
		expect((await later.open('j')).file.photographs).toEqual([photographOf(jpeg(64, 48, 1))]);
	});

	test('a link of the one lets in at the other; withdrawn it puts out at both', async () => {
		const desk = await one.device(secret);
		await joined(desk);
		const given = await linkFor(desk, 'work');
		const saws = [await one.device(given), await two.device(given)];
		for (const saw of saws) await joined(saw);
		desk.sharing.link.say({ say: 'withdraw', id: saws[0]!.sharing.link.link });
		for (const saw of saws)
			await until(() => expect(saw.sharing.link.state).toMatchObject({ why: 'withdrawn' }));
		await expect(two.device(given)).rejects.toThrow('withdrawn');
		await expect(two.device('no secret')).rejects.toThrow('refused: secret');
	});

	test('of the last two links by which all may be done one stays, whoever withdraws at once', async () => {
		const first = await one.device(secret);
		await joined(first);
		const second = await two.device(await linkFor(first, 'all'));
		await joined(second);
		const at = [first.sharing.link, second.sharing.link] as const;
		at[0].say({ say: 'withdraw', id: at[1].link });
		at[1].say({ say: 'withdraw', id: at[0].link });
		const out = () => at.filter(({ state }) => state.kind === 'refused');
		await until(() => expect(out()).toHaveLength(1));
		await new Promise((done) => setTimeout(done, 100));
		expect(out()).toHaveLength(1);
	});

	test('the last sheet booked at both goes to one, and both say whose it is', async () => {
		const desk = await one.device(secret);
		const saw = await two.device(secret);
		const hands = [await desk.open('j'), await saw.open('k')];
		const takes = { kind: 'owned', id: 'S', material: 'ply', length: 2440, width: 1220 } as const;
		for (const hand of hands)
			hand.book(
				(file) => ({ takings: [{ takes, yields: [] }], remnants: [], file }),
				'sheet 1 cut',
			);
		for (const hand of hands)
			await until(() => {
				hand.change((file) => file, '', null);
				expect(hand.file.stock?.sheets).toMatchObject([{ id: 'S', owned: 0 }]);
				expect(hand.lost).toHaveLength(1);
			});
		expect(new Set(hands.flatMap(({ lost }) => lost)).size).toBe(1);
	});

	test('the store killed: devices wait, go on by themselves, and lose nothing when it is back', async () => {
		const desk = await one.device(secret);
		const saw = await two.device(secret);
		const here = await desk.open('j');
		rename(here, 'Camper');
		await until(async () => expect(await saw.store.job('j')).toMatchObject({ name: 'Camper' }));
		const there = await saw.open('j');
		await redis.kill();
		for (const device of [desk, saw])
			await until(() => expect(device.sharing.link.state.kind).toBe('away'));
		rename(here, 'Camper 2');
		note(there, 'measured');
		await expect(one.device(secret)).rejects.toThrow('refused: away');
		redis = await RedisProcess.start(folder, redis.port);
		const both = { name: 'Camper 2', notes: 'measured' };
		for (const hand of [here, there]) await until(() => expect(hand.file).toMatchObject(both));
		for (const shop of [one, two]) expect(shop.notes.at(-1)).toBe('The shared store is back.');
		const later = await two.device(secret);
		await until(async () => expect(await later.store.job('j')).toMatchObject({ file: both }));
	});

	test('who has a job open at the one is told to who has it open at the other', async () => {
		const watching = async (shop: TestShop, name: string) => {
			const { link } = (await shop.device(secret, name)).sharing;
			const seen: { present: readonly Present[] } = { present: [] };
			link.onPresent = (devices) => (seen.present = devices);
			await until(() => expect(link.state.kind).toBe('joined'));
			return { link, seen };
		};
		const desk = await watching(one, 'Desk');
		const saw = await watching(two, 'Saw');
		const far = await watching(two, 'Far');
		const cutting = { sheet: 's', n: 1, done: 0, of: 3 };
		desk.link.standsAt({ doc: 'job j', page: 'Boards', cutting: null });
		saw.link.standsAt({ doc: 'job j', page: 'bench', cutting });
		far.link.standsAt({ doc: 'job k', page: 'Build', cutting: null });
		const atBench = [{ device: 'Saw', page: 'bench', cutting }];
		await until(() => expect(desk.seen.present).toEqual(atBench));
		await until(() =>
			expect(saw.seen.present).toEqual([{ device: 'Desk', page: 'Boards', cutting: null }]),
		);
		saw.link.standsAt({ doc: 'job j', page: 'bench', cutting: { ...cutting, done: 1 } });
		await until(() => expect(desk.seen.present).toMatchObject([{ cutting: { done: 1 } }]));
		expect(far.seen.present).toEqual([]);
		saw.link.standsAt({ doc: 'job k', page: 'bench', cutting });
		await until(() => expect(desk.seen.present).toEqual([]));
		await until(() => expect(far.seen.present).toEqual(atBench));
	});

	test('a document made one at one server goes on at the other', async () => {
		const desk = new RawDevice(one.port, 'job a');
		await desk.in(secret);
		const saw = new RawDevice(two.port, 'job a');
		await saw.in(secret);
		for (let i = 0; i < 400; i++) desk.type(`k${i}`, `=${i}`);
		await until(() => expect(desk.kept.size).toBe(400));
		await until(() => expect(saw.doc.keys('typed')).toHaveLength(400));
		desk.close();
		await until(async () => expect(await length(`{kerf-and-nap:shop-${n - 1}}:job a`)).toBe(1));
		saw.type('k0', '=changed');
		await until(() => expect(saw.kept.size).toBe(1));
		const later = new RawDevice(one.port, 'job a');
		await later.in(secret);
		expect(later.doc.keys('typed')).toHaveLength(400);
		expect(later.doc.register('typed', 'k0')).toBe('=changed');
		for (const device of [saw, later]) device.close();
	});
});

describe('a shared store', () => {
	const opened = (url: string, notes: string[] = []) =>
		SharedShop.open({ url, name: 'ours', rack: RACK, note: (line) => void notes.push(line) });

	test.each([
		['that keeps nothing', ['--appendonly', 'no'], 'its appendonly is "no" and must be "yes"'],
		['that keeps it later', ['--appendfsync', 'everysec'], 'its appendfsync is "everysec"'],
		['that lets go of the old', ['--maxmemory-policy', 'allkeys-lru'], 'must be "noeviction"'],
	])('%s is refused in words', async (_, more, words) => {
		const place = mkdtempSync(join(tmpdir(), 'kerf-and-nap-redis-'));
		const other = await RedisProcess.start(place, 0, more);
		await expect(opened(other.url)).rejects.toThrow(words);
		await other.kill();
		rmSync(place, { recursive: true, force: true });
	});

	test('that is not there is refused in words, without the password', async () => {
		const at = `localhost:${await freePort()}`;
		const failed = await opened(`redis://me:hidden@${at}`).catch((fault: Error) => fault.message);
		expect(failed).toContain(`cannot be kept in the shared store at ${at}: `);
		expect(failed).toContain('ECONNREFUSED');
		expect(failed).not.toContain('hidden');
	});

	test('that comes back as another is not taken for this shop', async () => {
		const place = mkdtempSync(join(tmpdir(), 'kerf-and-nap-redis-'));
		let other = await RedisProcess.start(place);
		const notes: string[] = [];
		const shop = await opened(other.url, notes);
		await other.kill();
		rmSync(place, { recursive: true });
		const empty = mkdtempSync(join(tmpdir(), 'kerf-and-nap-redis-'));
		other = await RedisProcess.start(empty, other.port);
		await until(() => expect(notes.at(-1)).toContain('another shop stands in the place'));
		expect(shop.isAway).toBe(true);
		await shop.close();
		await other.kill();
		rmSync(empty, { recursive: true, force: true });
	});

	test('of a newer planner is left alone', async () => {
		const client = await createClient({ url: redis.url }).connect();
		await client.hSet('{kerf-and-nap:ours}:about', { id: 'x', format: '1', job: '99' });
		await expect(opened(redis.url)).rejects.toThrow('kept by a newer planner');
		expect(await client.hGet('{kerf-and-nap:ours}:about', 'job')).toBe('99');
		client.destroy();
	});

	test('has its client fetched only where one is asked for', () => {
		const files = sources('src').filter(({ path }) => !path.startsWith('src/shop/shared/'));
		const uses = files.flatMap((file) =>
			importsOf(file).flatMap(({ from, onDemand }) =>
				target(file.path, from)?.startsWith('src/shop/shared/') ? [[file.path, onDemand]] : [],
			),
		);
		expect(uses).toEqual([['src/shop/start-shop.ts', true]]);
	});
});
