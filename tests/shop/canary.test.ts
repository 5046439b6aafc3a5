import 'fake-indexeddb/auto';
import dns from 'node:dns';
import { Socket } from 'node:net';
import { afterEach, expect, test, vi } from 'vitest';
import { TestShop } from './shop';

afterEach(() => vi.restoreAllMocks());

/** Where a socket is asked to go: a port of a host, or none. */
function hostOf(asked: unknown): string {
	const [first, second] = Array.isArray(asked) ? (asked as unknown[]) : [asked];
	if (typeof first === 'object' && first !== null)
		return String((first as { host?: unknown }).host ?? 'this machine');
	return typeof second === 'string' ? second : 'this machine';
}

test('a shop and its devices ask no host but the one the device was sent to', async () => {
	const hosts: string[] = [];
	const connect = Socket.prototype.connect as (...args: unknown[]) => Socket;
	vi.spyOn(Socket.prototype, 'connect').mockImplementation(function (
		this: Socket,
		...args: unknown[]
	) {
		hosts.push(hostOf(args[0]));
		return connect.apply(this, args);
	});
	const lookup = vi.spyOn(dns, 'lookup');
	const shop = new TestShop();
	await shop.start();
	const secret = await shop.owner();
	const device = await shop.device(secret);
	const hand = await device.open('j');
	hand.change((file) => ({ ...file, name: 'https://elsewhere.example/x' }), 'name', null);
	await vi.waitFor(() => expect(device.sharing.link.behind).toEqual([]), 20_000);
	expect(device.sharing.link.state.kind).toBe('joined');
	await shop.close();
	// The canary sings: the device's own way to the shop was seen.
	expect(hosts.length).toBeGreaterThan(0);
	expect([...new Set(hosts)]).toEqual(['localhost']);
	expect(new Set(lookup.mock.calls.map(([host]) => host))).toEqual(new Set(['localhost']));
});
