import { offer } from './offer';
import { plan, planAgain, savings, withOptions } from '../lib/plan';
import { forPaper } from '../lib/print';
import { planTogether } from '../lib/together';
import { makePlanner } from './make-planner';

/**
 * A message of our own behind those already waiting: timers of zero are held back by browsers,
 * ports are not.
 */
const { port1, port2 } = new MessageChannel();
const waiting: (() => void)[] = [];
port1.onmessage = () => waiting.shift()?.();

function breathe(): Promise<void> {
	return new Promise((done) => {
		waiting.push(done);
		port2.postMessage(null);
	});
}

offer(
	makePlanner({
		plan: async (file, options) => forPaper(await plan(file, options), file),
		planAgain,
		savings,
		withOptions,
		planTogether,
		breathe,
		clock: () => performance.now(),
	}),
);
