/** Seconds of processor time that one case may take. */
export const MOST_WORK = 2;

/**
 * Runs beside the cases in their process, where no endless loop can hold it up: ends the process
 * once the case in hand has taken too much. A moment over, so that what just passed the limit can
 * still say how long it took.
 */
export const WATCH = `
const { workerData: { begun, most } } = require('node:worker_threads');
setInterval(() => {
	const { user, system } = process.cpuUsage();
	if (begun[0] > 0 && user + system - begun[0] > (most + 8) * 1e6) process.kill(process.pid, 'SIGKILL');
}, 100);
`;
