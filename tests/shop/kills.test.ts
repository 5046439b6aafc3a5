import 'fake-indexeddb/auto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import { Door } from '../../src/setup/trust/kills/door';
import { RawDevice } from '../../src/setup/trust/kills/raw-device';
import { RedisProcess } from '../../src/setup/trust/kills/redis-process';
import { ServerProcess } from '../../src/setup/trust/kills/server-process';
import { killedServers } from '../../src/setup/trust/kills/servers';
import { killedShops } from '../../src/setup/trust/kills/shop';
import { TestShop } from './shop';

/* The short form; `npm run trust -- --part kills-shop` kills two hundred times. */
test('killed within edits, a server has all that it said to have kept', async () => {
	const row = await killedShops({ seed: 1, count: 3, lanes: 1, note: () => undefined });
	expect(row.found).toEqual([]);
	expect(row.survived).toBe(3);
	expect(Number(/(\d+) of them said to be kept/.exec(row.notes?.[0] ?? '')?.[1])).toBeGreaterThan(
		0,
	);
});

test('killed within edits, several servers and their store have all that was said to be kept', async () => {
	const row = await killedServers({ seed: 1, count: 4, lanes: 1, note: () => undefined });
	expect(row.found).toEqual([]);
	expect(row.survived).toBe(4);
	expect(Number(/(\d+) of them said to be kept/.exec(row.notes[0] ?? '')?.[1])).toBeGreaterThan(0);
});

test('a server killed: its devices are at the other by themselves, with all they did', async () => {
	const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-door-'));
	const redis = await RedisProcess.start(folder);
	const killed = await ServerProcess.start(redis.url, 0);
	const staying = new TestShop(redis.url);
	await staying.start();
	const door = await Door.before([killed.port, staying.port]); // the first of them first
	staying.port = door.port;
	const desk = await staying.device(killed.secret);
	const hand = await desk.open('j');
	hand.change((file) => ({ ...file, name: 'Camper' }), 'name', null);
	await vi.waitFor(() => expect(desk.sharing.link.behind).toEqual([]), 20_000);
	await killed.kill();
	hand.change((file) => ({ ...file, notes: 'measured' }), 'notes', null);
	await vi.waitFor(() => expect(desk.sharing.link.state.kind).toBe('joined'), 20_000);
	await vi.waitFor(() => expect(desk.sharing.link.behind).toEqual([]), 20_000);
	const later = await staying.device(killed.secret);
	const file = { name: 'Camper', notes: 'measured' };
	await vi.waitFor(async () => expect(await later.store.job('j')).toMatchObject({ file }), 20_000);
	await staying.close();
	door.close();
	await redis.kill();
	rmSync(folder, { recursive: true, force: true });
});

test('a full disk is told, loses nothing that was kept, and is got over', async () => {
	const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-full-'));
	const small = await ServerProcess.start(folder, 0, { most: 30_000 });
	const { port, secret } = small;
	const device = new RawDevice(port, 'job a');
	await device.in(secret);
	const word = `=${'w'.repeat(4000)}`;
	const told = (say: string) => device.words.filter((one) => one['say'] === say).length;
	for (let n = 0; n < 12; n++) {
		device.type(`k${n}`, word);
		await vi.waitFor(() => expect(told('kept') + told('not kept')).toBe(n + 1), 10_000);
	}
	expect(device.words.find(({ say }) => say === 'not kept')).toMatchObject({ why: 'no room' });
	expect(device.kept.size).toBeGreaterThan(3);
	await small.kill();
	const roomy = await ServerProcess.start(folder, port);
	const later = new RawDevice(port, 'job a');
	await later.in(secret);
	for (const n of device.kept) expect(later.doc.register('typed', `k${n - 1}`)).toBe(word);
	const rest = device.doc.lacking(later.doc.standing());
	later.say({ say: 'update', doc: 'job a', n: 1 }, rest ?? new Uint8Array(0));
	await later.told('kept');
	for (const one of [device, later]) one.close();
	await roomy.kill();
	rmSync(folder, { recursive: true, force: true });
});
