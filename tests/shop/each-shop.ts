import { afterEach, beforeEach, vi } from 'vitest';
import { TestShop } from './shop';

/** A shop for each test of the file that takes it, and the secret of its owner. */
export let shop: TestShop;
export let secret: string;

beforeEach(async () => {
	shop = new TestShop();
	await shop.start();
	secret = await shop.owner();
});
afterEach(() => shop.close());

/** Looks until it holds. */
export const until = (look: () => unknown): Promise<unknown> =>
	vi.waitFor(look, { timeout: 20_000, interval: 5 });
