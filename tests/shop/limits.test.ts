import { copyFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, test, vi } from 'vitest';
import { SharedDocument } from '../../src/lib/store/document/shared-document';
import { frame, LIMITS, SPEECH } from '../../src/lib/store/sharing/words';
import { ShopDocuments } from '../../src/shop/documents';
import { Guest, type Host, type Wire } from '../../src/shop/guest';
import { FolderLogs } from '../../src/shop/folder-logs';
import { valueIn } from '../../src/shop/whole-file';
import { Links } from '../../src/shop/links';
import { Presence } from '../../src/shop/presence';
import { RawDevice } from '../../src/setup/trust/kills/raw-device';
import { TestShop } from './shop';

/* Each limit at its figure, and one past it. */

/** Megabytes and thousands of files on a busy disk, milliseconds. */
const PATIENCE = 180_000;

let folder: string;
beforeEach(() => (folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-limits-'))));
afterEach(() => rmSync(folder, { recursive: true, force: true }), PATIENCE);

/** An update of just so many bytes; for another key by another writer. */
function updateOf(bytes: number, key = 'k'): Uint8Array {
	const make = (letters: number): Uint8Array => {
		const doc = new SharedDocument(key.charCodeAt(0));
		doc.put('map', key, `=${'w'.repeat(letters)}`);
		return doc.whole();
	};
	// What stands round the letters is as long for one letter less.
	const rough = make(bytes - 60);
	const update = make(2 * bytes - 60 - rough.length);
	expect(update.length).toBe(bytes);
	return update;
}

describe('a document', () => {
	it(
		'is kept up to its size, and not one byte more; what is there stays',
		async () => {
			const documents = await ShopDocuments.in(new FolderLogs(folder));
			await documents.use('job a');
			const quarter = LIMITS.document / 4;
			let size = 0;
			for (const key of ['a', 'b', 'c']) {
				expect(await documents.add('job a', updateOf(quarter - 28, key))).toMatchObject({
					kept: true,
				});
				size += quarter; // an entry has a head of 28 bytes
			}
			const left = LIMITS.document - size;
			expect(await documents.add('job a', updateOf(left + 1, 'd'))).toMatchObject({
				...{ kept: false, why: 'too large' },
			});
			expect(await documents.add('job a', updateOf(left, 'd'))).toMatchObject({ kept: true });
			expect(await documents.add('job a', updateOf(80, 'e'))).toMatchObject({ why: 'too large' });
			await documents.close();
		},
		PATIENCE,
	);
});

describe('a shop', () => {
	it(
		'takes as many documents as it says, and not one more; those it has stay open to all',
		async () => {
			const first = await ShopDocuments.in(new FolderLogs(folder));
			await first.use('job n0');
			await first.add('job n0', updateOf(100, 'k'));
			await first.close();
			const name = (n: number): string => join(folder, `job_n${n}.log`);
			for (let n = 1; n < LIMITS.documents - 1; n++) copyFileSync(name(0), name(n));
			const documents = await ShopDocuments.in(new FolderLogs(folder));
			expect(documents.list()).toHaveLength(LIMITS.documents - 1);
			expect(await documents.use('job last')).not.toBeNull();
			expect(await documents.use('job one-more')).toBeNull();
			expect(await documents.use('job n7')).not.toBeNull();
			await documents.leave('job last'); // nothing was put into it: its place is free again
			expect(await documents.use('job one-more')).not.toBeNull();
			await documents.close();
		},
		PATIENCE,
	);

	it('has as many links as it takes, and not one more', async () => {
		const path = join(folder, 'links.json');
		const line = { id: 'a', name: 'n', right: 'work', hash: 'h', made: 1 };
		writeFileSync(path, JSON.stringify(Array.from({ length: 499 }, () => line)));
		const links = await Links.in(valueIn(path));
		expect(await links.make('the last', 'work')).not.toBeNull();
		expect(await links.make('one more', 'work')).toBeNull();
		expect(links.all).toHaveLength(500);
	});
});

describe('a device that speaks fast', () => {
	beforeEach(() => {
		vi.useFakeTimers({ now: 1_000_000 });
	});
	afterEach(() => {
		vi.useRealTimers();
	});

	async function guest() {
		const documents = await ShopDocuments.in(new FolderLogs(folder));
		const links = await Links.in(valueIn(join(folder, 'links.json')));
		const secret = await links.make('Saw', 'work');
		const wire = { send: vi.fn(), pause: vi.fn(), resume: vi.fn(), end: vi.fn() };
		const host: Host = {
			kept: {
				...{ id: 's', documents, links, isAway: false, close: () => documents.close() },
				...{ onAway: vi.fn(), onElsewhere: vi.fn(), onLinks: vi.fn() },
				...{ sayToOthers: vi.fn(), onSaid: vi.fn() },
			},
			presence: new Presence(),
			...{ changed: vi.fn(), here: () => [], withdrawn: vi.fn(), note: vi.fn() },
			...{ addresses: [], fingerprint: null },
		};
		const one = new Guest(wire satisfies Wire, host);
		await one.hear(frame({ say: 'hello', secret: secret ?? '', device: 'Saw', speech: SPEECH }));
		return { one, wire };
	}
	const still = frame({ say: 'at', place: null });

	it('is heard at once up to its burst, then at its rate, and nothing of it is lost', async () => {
		const { one, wire } = await guest();
		// The hello was one of them; each hundred thousand bytes count as one more.
		const each = 1 + still.length / 100_000;
		const burst = Math.floor((LIMITS.burst - 1.01) / each);
		for (let n = 0; n < burst; n++) await one.hear(still);
		expect(wire.pause).not.toHaveBeenCalled();
		await one.hear(still);
		expect(wire.pause).toHaveBeenCalledTimes(1);
		expect(wire.end).not.toHaveBeenCalled();
		await vi.advanceTimersByTimeAsync(1000 / LIMITS.rate + 1);
		expect(wire.resume).toHaveBeenCalledTimes(1);
		// A second later as many as the rate says are free again.
		await vi.advanceTimersByTimeAsync(1000);
		wire.pause.mockClear();
		for (let n = 0; n < LIMITS.rate - 1; n++) await one.hear(still);
		expect(wire.pause).not.toHaveBeenCalled();
		await one.hear(still);
		await one.hear(still);
		await one.hear(still);
		expect(wire.pause).toHaveBeenCalled();
	});

	it('is nobody until it has said who it is: of a stranger no long word is read', async () => {
		for (const [bytes, isRead] of [
			[LIMITS.stranger, true],
			[LIMITS.stranger + 1, false],
		] as const) {
			const wire = { send: vi.fn(), pause: vi.fn(), resume: vi.fn(), end: vi.fn() };
			const links = { of: vi.fn(() => null) };
			const kept = { links, documents: {} };
			const one = new Guest(wire, { kept, presence: new Presence() } as unknown as Host);
			const word = frame({ say: 'hello', secret: 's', device: '', speech: SPEECH });
			const padded = frame({
				say: 'hello',
				secret: 's',
				device: 'd'.repeat(bytes - word.length),
				speech: SPEECH,
			});
			expect(padded.length).toBe(bytes);
			await one.hear(padded);
			expect(links.of.mock.calls.length, String(bytes)).toBe(isRead ? 1 : 0);
			expect(wire.end).toHaveBeenCalled();
		}
	});
});

describe('over the wire', () => {
	let shop: TestShop;
	let secret: string;
	beforeEach(async () => {
		shop = new TestShop();
		await shop.start();
		secret = await shop.owner();
	});
	afterEach(() => shop.close());

	test('as many devices as it says are let in, and not one more, who is told why', async () => {
		const devices: RawDevice[] = [];
		for (let n = 0; n < 200; n++) {
			const one = new RawDevice(shop.port, 'job a');
			await one.in(secret);
			devices.push(one);
		}
		const more = new RawDevice(shop.port, 'job a');
		await expect(more.in(secret)).rejects.toThrow(/crowded/);
		devices.pop()?.close();
		await vi.waitFor(async () => {
			const again = new RawDevice(shop.port, 'job a');
			await again.in(secret);
			devices.push(again);
		}, 10_000);
		for (const one of devices) one.close();
	});

	test('of strangers who say nothing twenty are borne, and devices still come in', async () => {
		const strangers = Array.from({ length: 20 }, () => new RawDevice(shop.port, 'job a'));
		await Promise.all(strangers.map((one) => one.opened()));
		const more = new RawDevice(shop.port, 'job a');
		await expect(more.in(secret)).rejects.toThrow(/crowded/);
		strangers.pop()?.close();
		await vi.waitFor(async () => {
			const again = new RawDevice(shop.port, 'job a');
			await again.in(secret);
			again.close();
		}, 10_000);
		for (const one of strangers) one.close();
	});
});
