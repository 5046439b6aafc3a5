import { proxy, wrap, type Remote } from 'comlink';
import type { JobFile } from '../../job';
import type { Progress, SpoiledAt } from '../../layout';
import type { Plan, PlannedAgain } from '../../plan';
import type { PlannedTogether } from '../../together';
import { searchTogether } from './search-together';
import type { PlanningWorker, Planner, Printer } from './planner';

/** How long a worker may stay silent after 'stop' before it is given up and another one started. */
const PATIENCE = 8000;

/** More searches side by side than this gain little, and a phone has other things to do. */
const MOST_HANDS = 4;

/**
 * The planner: one worker that follows the edits, started when first asked, and as many more beside
 * it as the machine has cores while somebody keeps looking.
 */
export function startPlanner(
	start: () => Worker = planWorker,
	cores = navigator.hardwareConcurrency,
): Planner {
	const first = startHand(start);
	let others: readonly EndableHand[] = [];
	const sendHome = (): void => {
		for (const hand of others) hand.end();
		others = [];
	};
	return {
		plan(file, ask, tell) {
			sendHome();
			return first.plan(file, ask, tell);
		},
		options: (plan, file, ask, tell) => first.options(plan, file, ask, tell),
		savings: (plan, n) => first.savings(plan, n),
		async search(file, ask, tell) {
			sendHome();
			const count = Math.max(1, Math.min(MOST_HANDS, cores || 1));
			const mine = Array.from({ length: count - 1 }, () => startHand(start));
			others = mine;
			const found = await searchTogether([first, ...mine], file, ask, tell);
			for (const hand of mine) hand.end();
			return found;
		},
		async stop() {
			await Promise.all([first, ...others].map(async (hand) => hand.stop()));
		},
	};
}

/**
 * Plans of these files, one after another, in a worker of their own that is ended after it: the
 * plan on the screen is not disturbed.
 */
export async function planApart(
	files: readonly unknown[],
	start: () => Worker = planWorker,
): Promise<readonly (Plan | null)[]> {
	const hand = startHand(start);
	const plans: (Plan | null)[] = [];
	try {
		for (const [i, file] of files.entries())
			plans.push(await hand.plan(file, { n: i + 1 }, () => undefined));
	} finally {
		hand.end();
	}
	return plans;
}

/** The options of a plan being priced in a worker of their own; `end` gives it up. */
export interface OptionsAsked {
	readonly plan: Promise<Plan | null>;
	end(): void;
}

/** Prices the options of a plan: the plan on the screen is not disturbed. */
export function priceOptions(
	of: Plan,
	file: unknown,
	tell: (progress: Progress) => void,
	start: () => Worker = planWorker,
): OptionsAsked {
	const hand = startHand(start);
	const asked = hand.options(of, file, { n: 1 }, tell).finally(() => hand.end());
	return { plan: asked, end: () => hand.end() };
}

/** The ways to get a spoiled piece again, each planned; `end` gives it up. */
export interface AgainAsked {
	readonly ways: Promise<readonly PlannedAgain[] | null>;
	end(): void;
}

/** Plans every way to get a spoiled piece again: the plan on the screen is not disturbed. */
export function planWaysAgain(
	of: Plan,
	file: JobFile,
	at: SpoiledAt,
	start: () => Worker = planWorker,
): AgainAsked {
	const hand = startHand(start);
	const ways = hand.again(of, file, at, { n: 1 }).finally(() => hand.end());
	return { ways, end: () => hand.end() };
}

/** Several jobs being planned in a worker of their own; `end` gives it up. */
export interface TogetherAsked {
	readonly planned: Promise<PlannedTogether | null>;
	end(): void;
}

/** Plans several jobs in one go: the plan of the job in hand is not disturbed. */
export function planJobsTogether(
	files: readonly unknown[],
	tell: (progress: Progress) => void,
	start: () => Worker = planWorker,
): TogetherAsked {
	const hand = startHand(start);
	const planned = hand.together(files, { n: 1 }, tell).finally(() => hand.end());
	return { planned, end: () => hand.end() };
}

interface EndableHand extends PlanningWorker {
	/** Ends the worker; what it was asked answers null. */
	end(): void;
}

/**
 * One worker. When it does not answer a stop in time (it is deep in one step of a search), it is
 * ended, and what it was asked answers null: the plan on screen stays.
 */
function startHand(start: () => Worker): EndableHand {
	let worker: Worker | null = null;
	let remote: Remote<PlanningWorker> | null = null;
	let giveUp: ((nothing: null) => void) | null = null;
	const ready = (): Remote<PlanningWorker> => {
		worker ??= start();
		return (remote ??= wrap<PlanningWorker>(worker));
	};
	const end = (): void => {
		worker?.terminate();
		worker = remote = null;
		giveUp?.(null);
	};
	const orAbandoned = <Answer>(asked: Promise<Answer>): Promise<Answer | null> =>
		Promise.race([asked, failed(worker), new Promise<null>((done) => (giveUp = done))]);
	return {
		end,
		plan: (file, ask, tell) => orAbandoned(ready().plan(file, ask, proxy(tell))),
		options: (plan, file, ask, tell) => orAbandoned(ready().options(plan, file, ask, proxy(tell))),
		together: (files, ask, tell) =>
			orAbandoned<PlannedTogether | null>(ready().together(files, ask, proxy(tell))),
		again: (plan, file, at, ask) =>
			orAbandoned<readonly PlannedAgain[] | null>(ready().again(plan, file, at, ask)),
		savings: (plan, n) => orAbandoned(ready().savings(plan, n)),
		async stop() {
			if (!remote) return;
			const stuck = setTimeout(end, PATIENCE);
			await remote.stop();
			clearTimeout(stuck);
		},
	};
}

interface EndablePrinter extends Printer {
	/** Ends the worker, and what it was asked goes unanswered; asked again, another starts. */
	end(): void;
}

/**
 * The printer in a worker of its own, started when somebody prints: the PDF library is fetched
 * then, not before. (A worker that fetched it by itself could not do so offline: the service
 * worker's list knows only what the page names.)
 */
export function startPrinter(start: () => Worker = printWorker): EndablePrinter {
	let worker: Worker | null = null;
	let remote: Remote<Printer> | null = null;
	const orFailed = <T>(ask: (printer: Remote<Printer>) => Promise<T>): Promise<T> => {
		worker ??= start();
		remote ??= wrap<Printer>(worker);
		return Promise.race([ask(remote), failed(worker)]);
	};
	return {
		outputFiles: (...asked) => orFailed((printer) => printer.outputFiles(...asked)),
		shownPages: (...asked) => orFailed((printer) => printer.shownPages(...asked)),
		end() {
			worker?.terminate();
			worker = remote = null;
		},
	};
}

function printWorker(): Worker {
	return new Worker(new URL('../../../worker/print-worker.ts', import.meta.url), {
		type: 'module',
	});
}

function planWorker(): Worker {
	return new Worker(new URL('../../../worker/plan-worker.ts', import.meta.url), { type: 'module' });
}

/** A worker that cannot even start says so by an event and never by an answer. */
function failed(worker: Worker | null): Promise<never> {
	return new Promise((_, refuse) => {
		worker?.addEventListener('error', (event) => {
			refuse(new Error(event.message || 'The planner could not be started.'));
		});
	});
}
