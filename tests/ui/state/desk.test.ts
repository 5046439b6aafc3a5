import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import { EFFORT } from '../../../src/lib/layout/pace';
import { money } from '../../../src/lib/measure/money';
import { plan, type Plan } from '../../../src/lib/plan';
import type { Ask, Planner, Printer } from '../../../src/lib/ui/planning/planner';
import { Desk } from '../../../src/lib/ui/state/desk.svelte';
import { firstJob } from '../../../src/lib/ui/state/opening/first-job';
import { leaveWords, takeWords } from '../../../src/lib/ui/state/saving/last-words';
import { openStore } from '../../../src/lib/store/database/open-store';
import type { Store } from '../../../src/lib/store/database/store';
import { mm } from '../../../src/lib/measure/length';

const FILE: JobFile = {
	name: 'Test box',
	stock: {
		materials: [{ id: 'ply-18', name: 'Plywood', nominal: 18, measured: 17.6 }],
		sheets: [{ id: 's', material: 'ply-18', length: 2440, width: 1220, price: 80 }],
	},
	parts: [{ id: 'P1', material: 'ply-18', length: 600, width: 400 }],
};

/** Plans in this very thread, one request at a time, and remembers what it was asked. */
function handPlanner(): Planner & { asked: unknown[]; asks: Ask[] } {
	const asked: unknown[] = [];
	const asks: Ask[] = [];
	return {
		asked,
		asks,
		plan: async (file, ask) => {
			asked.push(file);
			asks.push(ask);
			return plan(file, { effort: 50 });
		},
		search: async () => null,
		options: async (of) => of,
		savings: async () => [],
		stop: () => undefined,
	};
}

const SHEET = { width: 210, height: 297 };

const printer: Printer = {
	outputFiles: (kind, made) =>
		Promise.resolve([{ name: `${kind} of ${made.job.name}`, type: '', bytes: new Uint8Array() }]),
	shownPages: (kind, made, from, count) => ({
		of: from + count,
		pages: [{ ...SHEET, n: from + 1, name: `${kind} of ${made.job.name}`, svg: '' }],
	}),
};

/** A storage as browsers have it, as far as it is used. */
function shelf(): Storage {
	const kept = new Map<string, string>();
	return {
		getItem: (key: string) => kept.get(key) ?? null,
		setItem: (key: string, text: string) => void kept.set(key, text),
		removeItem: (key: string) => void kept.delete(key),
	} as Storage;
}

let name = 0;
let store: Store;
let planner: ReturnType<typeof handPlanner>;
let desk: Desk;

beforeEach(async () => {
	store = openStore(`desk-${name++}`);
	planner = handPlanner();
	desk = new Desk(store, planner, printer, 'window-1');
	await desk.open({ id: 'job-1', file: FILE, sharesRack: false });
});
afterEach(async () => {
	await desk.settled();
	for (const opened of [desk, ...others.splice(0)]) opened.close();
	store.close();
});

const others: Desk[] = [];
/** Another window on the same database. */
function otherDesk(writer: string): Desk {
	const other = new Desk(store, handPlanner(), printer, writer);
	others.push(other);
	return other;
}

async function planned(test: (plan: Plan) => boolean): Promise<Plan> {
	await vi.waitFor(() => expect(desk.plan !== null && test(desk.plan)).toBe(true), {
		timeout: 5000,
	});
	return desk.plan!;
}

describe('an edit', () => {
	it('is followed by the plan', async () => {
		await planned((p) => p.parts.length === 1);
		desk.type(['parts', 0, 'length'], 750, 'Length');
		const after = await planned((p) => p.parts[0]?.length === mm(750));
		expect(after.problems).toEqual([]);
	});

	it('that is wrong stays as typed, and the problem names its place', async () => {
		desk.type(['parts', 0, 'length'], '75o', 'Length');
		await planned((p) => p.problems.length > 0);
		expect(desk.file.parts?.[0]?.length).toBe('75o');
		expect(desk.problemsAt(['parts', 0, 'length'])).toHaveLength(1);
		expect(desk.problemsAt(['parts', 0, 'length'])[0]?.what).toContain('is not a unit of length');
	});

	it('waits until the keys are still, and is then asked for once', async () => {
		await planned(() => true);
		const before = planner.asked.length;
		for (const n of [7, 75, 750]) desk.type(['parts', 0, 'length'], n, 'Length');
		await planned((p) => p.parts[0]?.length === mm(750));
		expect(planner.asked.length - before).toBe(1);
	});

	it('drops a plan that comes back too late', async () => {
		await planned(() => true);
		let comeBack: (plan: Plan) => void = () => undefined;
		const slow = new Promise<Plan | null>((done) => (comeBack = done));
		const quick = await plan({ ...FILE, name: 'Quick' }, { effort: 50 });
		const answers = [slow, Promise.resolve(quick)];
		planner.plan = () => answers.shift() ?? Promise.resolve(null);
		desk.watch.follow(desk.file, 0);
		await vi.waitFor(() => expect(answers).toHaveLength(1));
		desk.watch.follow(desk.file, 0);
		await planned((p) => p.job.name === 'Quick');
		comeBack(await plan({ ...FILE, name: 'Slow' }, { effort: 50 }));
		await slow;
		expect(desk.plan?.job.name).toBe('Quick');
		expect(desk.watch.busy).toBe(false);
	});

	it('keeps the plan in view and says so when planning breaks', async () => {
		await planned(() => true);
		planner.plan = () => Promise.reject(new Error('bug: a broken saw'));
		desk.type(['name'], 'Other', 'Name');
		await vi.waitFor(() => expect(desk.watch.broke).toBe('bug: a broken saw'));
		expect(desk.plan).not.toBeNull();
		expect(desk.watch.busy).toBe(false);
		// That plan is older than the job: no paper is made of it, until one of the job stands.
		const faces = { regular: '', semibold: '', fallback: '' };
		await expect(desk.outputFiles('print-pack', faces)).rejects.toThrow(/older than the job/);
		planner.plan = (file) => plan(file, { effort: 50 });
		desk.type(['name'], 'Third', 'Name');
		await expect(desk.outputFiles('print-pack', faces)).rejects.toThrow(/older than the job/);
		await planned((p) => p.job.name === 'Third');
		const files = await desk.outputFiles('print-pack', faces);
		expect(files.map((f) => f.name)).toEqual(['print-pack of Third']);
	});
});

describe('keep looking', () => {
	/** A plan that a search of this seed and effort might have found, at this price. */
	async function found(seed: number, effort: number, total: number): Promise<Plan> {
		const made = await plan(FILE, { seed, effort });
		return { ...made, order: { ...made.order, total: money(total) } };
	}
	/** The desk has its usual plan in view. */
	async function ready(): Promise<Plan> {
		planner.plan = async (file, ask) => {
			planner.asks.push(ask);
			return plan(file, ask);
		};
		desk.watch.follow(desk.file, 0);
		await vi.waitFor(() => expect(desk.watch.busy).toBe(false));
		planner.asks.length = 0;
		return desk.plan!;
	}
	async function searchOn(): Promise<void> {
		desk.searchFurther();
		await vi.waitFor(() => expect(desk.watch.busy).toBe(false));
	}

	it('writes the search that won into the job, and plans nothing anew for it', async () => {
		const before = await ready();
		const better = await found(3, 10 * EFFORT, before.order.total - 1);
		planner.search = async () => better;
		await searchOn();
		expect(desk.plan).toBe(better);
		expect(desk.file.seed).toBe(3);
		expect(desk.file.look).toEqual({ effort: 10 * EFFORT, stopped: null });
		expect(planner.asks).toEqual([]);
		await desk.settled();
		expect((await store.job('job-1'))?.file).toEqual(desk.file);
		desk.undo();
		expect(desk.file).toEqual(FILE);
	});

	it('keeps the plan in view when nothing better is found, and looks longer the next time', async () => {
		const before = await ready();
		const asked: unknown[] = [];
		planner.search = async (_, { effort, seed }) => {
			asked.push([effort, seed]);
			return found(2, effort, before.order.total);
		};
		for (let i = 0; i < 4; i++) await searchOn();
		expect(desk.plan).toBe(before);
		expect(desk.file).toEqual(FILE);
		expect(desk.watch.search?.better).toBe(false);
		expect(asked).toEqual([
			[10 * EFFORT, 1],
			[100 * EFFORT, 1],
			[100 * EFFORT, 5],
			[100 * EFFORT, 9],
		]);
	});

	it('shows a usual plan of the edited job first, then the one of its own search', async () => {
		await ready();
		desk.set(['look'], { effort: 10 * EFFORT }, 'look');
		desk.set(['seed'], 7, 'seed');
		await vi.waitFor(() => expect(desk.plan?.search.effort).toBe(10 * EFFORT));
		expect(planner.asks.map((a) => a.effort)).toEqual([EFFORT, undefined]);
		expect(desk.plan?.search).toEqual({ seed: 7, effort: 10 * EFFORT, stopped: null });
	});

	it('remembers where it was ended, so that the same plan is made again', async () => {
		await ready();
		planner.plan = async (file) => plan(file, { watch: () => false });
		desk.set(['name'], 'Ended', 'Name');
		void desk.watch.stop();
		await vi.waitFor(() => expect(desk.file.look).toEqual({ effort: EFFORT, stopped: 1 }));
		desk.undo();
		expect(desk.file).toEqual(FILE);
	});

	it('goes back to the usual search when told to', async () => {
		await ready();
		desk.set(['look'], { effort: 10 * EFFORT }, 'look');
		expect(desk.hasOwnSearch).toBe(true);
		desk.searchAsUsual();
		expect(desk.file).toEqual(FILE);
		expect(desk.hasOwnSearch).toBe(false);
	});
});

describe('printing', () => {
	const faces = { regular: '', semibold: '', fallback: '' };

	it('prints the plan in view', async () => {
		await planned(() => true);
		expect((await desk.outputFiles('labels', faces))[0]?.name).toBe('labels of Test box');
	});

	it('shows the pages of the plan in view', async () => {
		await planned(() => true);
		const name = 'quote of Test box';
		expect(await desk.shownPages('quote', 2, 4)).toEqual({
			of: 6,
			pages: [{ ...SHEET, n: 3, name, svg: '' }],
		});
	});

	it('gives nothing before there is a plan', async () => {
		desk.watch.clear();
		expect(await desk.shownPages('quote', 0, 4)).toEqual({ of: 0, pages: [] });
		expect(await desk.outputFiles('labels', faces)).toEqual([]);
	});
});

describe('undo', () => {
	it('takes back a whole word, a choice, a thing added, and does them again', async () => {
		await desk.settled();
		const start = desk.file;
		for (const text of ['N', 'Ne', 'New']) desk.type(['name'], text, 'Name');
		desk.set(['shop', 'paper'], 'letter', 'Paper');
		desk.insert(['parts'], { id: 'P2', material: 'ply-18', length: 1, width: 1 }, 'add part');
		const end = desk.file;
		desk.undo();
		desk.undo();
		expect(desk.file.name).toBe('New');
		desk.undo();
		expect(desk.file).toEqual(start);
		expect(desk.undoes).toBeNull();
		for (let i = 0; i < 3; i++) desk.redo();
		expect(desk.file).toEqual(end);
	});

	it('tells a screen reader what was undone', async () => {
		desk.type(['name'], 'New', 'Name');
		await desk.settled();
		desk.undo();
		expect(desk.said).toBe('Undone: Name.');
	});
});

describe('the database', () => {
	it('holds every letter, wrong ones too: another desk opens what this one typed', async () => {
		desk.type(['parts', 0, 'width'], '4oo', 'Width');
		await desk.settled();
		const other = otherDesk('window-2');
		expect(await other.openStored('job-1')).toBe(true);
		expect(other.file).toEqual(desk.file);
		expect(other.file.parts?.[0]?.width).toBe('4oo');
		await other.settled();
	});

	it('remembers the job that is open', async () => {
		await desk.settled();
		expect(await store.thing('open')).toBe('job-1');
	});

	it('leaves behind what it has not got when the page goes, to be taken up once', async () => {
		desk.type(['name'], 'Half a wor', 'Name');
		const storage = shelf();
		leaveWords(desk.unkept(), storage);
		const left = takeWords(storage);
		expect((await firstJob(store, left)).file.name).toBe('Half a wor');
		expect(takeWords(storage)).toBeNull();
		await desk.settled();
		expect(desk.unkept()).toBeNull();
	});

	it('does not trip over words left behind that it cannot read', () => {
		const storage = shelf();
		for (const text of ['{', '[]', 'null', '{"id":7}']) {
			storage.setItem('kerf-and-nap unkept', text);
			expect(takeWords(storage), text).toBeNull();
		}
	});

	it('that cannot write is told, and nothing else is lost', async () => {
		await desk.settled();
		const { append } = store;
		store.append = () => Promise.reject(new DOMException('full', 'QuotaExceededError'));
		desk.type(['name'], 'Unkept', 'Name');
		await desk.settled();
		expect(desk.saver.state).toBe('failed');
		expect(desk.saver.fault).toContain('full');
		expect(desk.isUnsaved).toBe(true);
		expect(desk.file.name).toBe('Unkept');
		store.append = append; // there is room again
		await desk.lookAgain();
		await vi.waitFor(() => expect(desk.saver.state).toBe('saved'));
		expect(desk.isUnsaved).toBe(false);
		expect((await store.job('job-1'))?.name).toBe('Unkept');
	});

	it('shares the rack among the jobs that ask for it, and with no other', async () => {
		await desk.shareRack('give');
		desk.type(['stock', 'sheets', 0, 'owned'], 3, 'On the rack');
		await desk.settled();
		const sharing = otherDesk('window-2');
		await sharing.open({ id: 'job-2', file: { name: 'Two' }, sharesRack: true });
		expect(sharing.file.stock?.sheets?.[0]?.owned).toBe(3);
		const own = otherDesk('window-3');
		await own.open({ id: 'job-3', file: { name: 'Three' }, sharesRack: false });
		expect(own.file.stock).toBeUndefined();
		await Promise.all([sharing.settled(), own.settled()]);
	});
});
