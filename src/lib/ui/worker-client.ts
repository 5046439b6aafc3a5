import { proxy, wrap, type Remote } from 'comlink';
import type { Planner, Printer } from './planner';

/** How long a worker may stay silent after 'stop' before it is given up and another one started. */
const PATIENCE = 8000;

/**
 * The planner in its worker, started when first asked. When the worker does not answer a stop in time (it is deep in one
 * step of a search), it is ended, and what it was asked answers null: the plan on screen stays.
 */
export function startPlanner(start: () => Worker = planWorker): Planner {
	let worker: Worker | null = null;
	let remote: Remote<Planner> | null = null;
	let giveUp: ((nothing: null) => void) | null = null;
	const ready = (): Remote<Planner> => {
		worker ??= start();
		return (remote ??= wrap<Planner>(worker));
	};
	const end = (): void => {
		worker?.terminate();
		worker = remote = null;
		giveUp?.(null);
	};
	return {
		plan(file, ask, tell) {
			const asked = ready().plan(file, ask, proxy(tell));
			const abandoned = new Promise<null>((done) => (giveUp = done));
			return Promise.race([asked, failed(worker), abandoned]);
		},
		savings(plan, n) {
			const asked = ready().savings(plan, n);
			const abandoned = new Promise<null>((done) => (giveUp = done));
			return Promise.race([asked, failed(worker), abandoned]);
		},
		async stop() {
			if (!remote) return;
			const stuck = setTimeout(end, PATIENCE);
			await remote.stop();
			clearTimeout(stuck);
		},
	};
}

/**
 * The printer in a worker of its own, started when somebody prints: the PDF library is fetched then, not before. (A worker
 * that fetched it by itself could not do so offline: the service worker's list knows only what the page names.)
 */
export function startPrinter(start: () => Worker = printWorker): Printer {
	let worker: Worker | null = null;
	let remote: Remote<Printer> | null = null;
	return {
		paper(kind, plan, faces) {
			worker ??= start();
			remote ??= wrap<Printer>(worker);
			return Promise.race([remote.paper(kind, plan, faces), failed(worker)]);
		},
	};
}

function printWorker(): Worker {
	return new Worker(new URL('../../worker/print-worker.ts', import.meta.url), { type: 'module' });
}

function planWorker(): Worker {
	return new Worker(new URL('../../worker/plan-worker.ts', import.meta.url), { type: 'module' });
}

/** A worker that cannot even start says so by an event and never by an answer. */
function failed(worker: Worker | null): Promise<never> {
	return new Promise((_, refuse) => {
		worker?.addEventListener('error', (event) => {
			refuse(new Error(event.message || 'The planner could not be started.'));
		});
	});
}
