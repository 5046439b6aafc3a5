import { describe, expect, it, vi } from 'vitest';
import { NewVersion } from '../../../src/lib/ui/shell/new-version.svelte';

/** A browser's workers: one in use, one waiting that answers so when asked to take over. */
function workers(waits: boolean, comes: boolean) {
	const said: unknown[] = [];
	const all = new EventTarget();
	const waiting = {
		postMessage: (word: unknown, [port]: MessagePort[]) => {
			said.push(word);
			port!.postMessage(comes);
			if (comes) setTimeout(() => all.dispatchEvent(new Event('controllerchange')));
		},
	};
	const active = { postMessage: (word: unknown) => said.push(word) };
	const registration = Object.assign(new EventTarget(), {
		...{ active, installing: null as EventTarget | null, waiting: waits ? waiting : null },
		update: vi.fn(() => Promise.resolve()),
	});
	const container = Object.assign(all, { ready: Promise.resolve(registration) });
	return { container: container as unknown as ServiceWorkerContainer, registration, waiting, said };
}

describe('a new version', () => {
	it('is said when it waits, and taken only when asked for', async () => {
		const { container, said } = workers(true, true);
		const reload = vi.fn();
		const version = new NewVersion(container, reload);
		await version.watch(['/a.js']);
		expect(version.isHere).toBe(true);
		expect(said).toEqual([{ kind: 'opened', parts: ['/a.js'] }]);
		expect(reload).not.toHaveBeenCalled();
		await version.take();
		expect(said.at(-1)).toEqual({ kind: 'take over' });
		expect(reload).toHaveBeenCalledOnce();
	});

	it('is held while other windows are open: nothing is reloaded', async () => {
		const { container } = workers(true, false);
		const reload = vi.fn();
		const version = new NewVersion(container, reload);
		await version.watch([]);
		await version.take();
		expect(version.isHeld).toBe(true);
		expect(reload).not.toHaveBeenCalled();
	});

	it('is not said of the first one, and is when one has come later', async () => {
		const { container, registration, waiting } = workers(false, true);
		const version = new NewVersion(container, vi.fn());
		await version.watch([]);
		expect(version.isHere).toBe(false);
		const installing = new EventTarget();
		registration.installing = installing;
		registration.dispatchEvent(new Event('updatefound'));
		registration.waiting = waiting;
		installing.dispatchEvent(new Event('statechange'));
		expect(version.isHere).toBe(true);
	});

	it('is looked for once an hour at most, and not where there are no workers', async () => {
		const { container, registration } = workers(false, true);
		const version = new NewVersion(container, vi.fn(), 0);
		await version.watch([]);
		version.lookAgain(60_000);
		expect(registration.update).not.toHaveBeenCalled();
		version.lookAgain(3_700_000);
		version.lookAgain(3_800_000);
		expect(registration.update).toHaveBeenCalledOnce();
		const none = new NewVersion(undefined, vi.fn());
		await none.watch([]);
		await none.take();
		expect(none.isHere).toBe(false);
	});
});
