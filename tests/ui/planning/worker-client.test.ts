import { expose } from 'comlink';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { planTogether } from '../../../src/lib/together';
import { plan, planAgain, savings, withOptions } from '../../../src/lib/plan';
import { startPlanner, startPrinter } from '../../../src/lib/ui/planning/worker-client';
import { makePlanner } from '../../../src/worker/make-planner';

const JOB = {
	stock: {
		materials: [{ id: 'ply', name: 'Plywood', nominal: 18, measured: 18 }],
		sheets: [{ id: 's', material: 'ply', length: 1000, width: 600, price: 30 }],
	},
	parts: [{ id: 'P1', material: 'ply', length: 300, width: 210, count: 31 }],
};
const silent = (): void => undefined;

/** Workers that are no threads: the real planner at the other end of a message channel. */
class Crew {
	readonly started: { readonly ports: readonly MessagePort[]; ended: boolean }[] = [];
	readonly seeds: (number | undefined)[] = [];
	/** A clock that goes on whenever it is looked at. */
	#now = 0;

	start = (): Worker => {
		const { port1, port2 } = new MessageChannel();
		const worker = { ports: [port1, port2], ended: false };
		const means = {
			plan: (file: unknown, options: Parameters<typeof plan>[1] = {}) => {
				this.seeds.push(options.seed);
				return plan(file, options);
			},
			savings,
			withOptions,
			planAgain,
			planTogether,
			// Ended means ended: a thread that is gone never breathes again.
			breathe: () => new Promise<void>((done) => void (worker.ended || setImmediate(done))),
			clock: () => (this.#now += 100),
		};
		expose(makePlanner(means), port2);
		this.started.push(worker);
		const terminate = (): void => {
			worker.ended = true;
			for (const port of worker.ports) port.close();
		};
		return Object.assign(port1, { terminate }) as unknown as Worker;
	};

	get working(): number {
		return this.started.filter((w) => !w.ended).length;
	}
	end(): void {
		for (const { ports } of this.started) for (const port of ports) port.close();
	}
}

let crew = new Crew();
afterEach(() => {
	crew.end();
	crew = new Crew();
});

describe('the planner and its workers', () => {
	it('looks with one worker for each core, four at most, each with a seed of its own', async () => {
		const planner = startPlanner(crew.start, 12);
		const found = await planner.search(JOB, { n: 1, effort: 60, seed: 0xfffffffe }, silent);
		expect(crew.started).toHaveLength(4);
		expect(crew.seeds).toEqual([0xfffffffe, 0xffffffff, 0, 1]);
		expect(found?.boards[0]?.answer.unplaced).toEqual([]);
		expect(crew.working).toBe(1); // the one that follows the edits
	});

	it('finds the same however often it is asked', async () => {
		const ask = { effort: 100, seed: 1 };
		const first = await startPlanner(crew.start, 2).search(JOB, { n: 1, ...ask }, silent);
		const second = await startPlanner(crew.start, 2).search(JOB, { n: 1, ...ask }, silent);
		expect(second).toEqual(first);
	});

	it('ends all of them when told to stop, each with the best it has', async () => {
		const planner = startPlanner(crew.start, 2);
		const stopping: Promise<void>[] = [];
		const found = await planner.search(JOB, { n: 1, effort: 20_000, seed: 1 }, () => {
			if (stopping.length === 0) stopping.push(Promise.resolve(planner.stop()));
		});
		await Promise.all(stopping);
		expect(found?.boards[0]?.faults).toEqual([]);
		expect(found?.search.stopped).toBeGreaterThan(0);
		expect(crew.working).toBe(1);
	}, 30_000);

	it('sends the others home when an edit comes in, and answers the edit', async () => {
		const planner = startPlanner(crew.start, 2);
		const searching = planner.search(JOB, { n: 1, effort: 20_000, seed: 1 }, silent);
		await vi.waitFor(() => expect(crew.seeds).toHaveLength(2));
		const made = await planner.plan({ ...JOB, name: 'Edited' }, { n: 2, effort: 100 }, silent);
		expect(made?.job.name).toBe('Edited');
		expect(await searching).toBeNull();
		expect(crew.working).toBe(1);
	}, 30_000);
});

it('a printer that is ended leaves no worker behind, and starts another when asked again', () => {
	const working: object[] = [];
	const printer = startPrinter(() => {
		const worker = Object.assign(new EventTarget(), {
			postMessage: silent,
			terminate: () => void working.splice(working.indexOf(worker), 1),
		});
		working.push(worker);
		return worker as unknown as Worker;
	});
	printer.end();
	for (let round = 0; round < 2; round++) {
		void printer.outputFiles('order', {} as never, {} as never);
		expect(working).toHaveLength(1);
		printer.end();
		expect(working).toHaveLength(0);
	}
});
