import { fromDebian, onTheMachine } from './debian.js';

/*
 * What the tests of several servers and of batches run beside the planner. A test whose program is
 * missing fails, and says so.
 */

/** @typedef {'redis-server' | 'parallel'} Program */

/** @type {Readonly<Record<Program, { variable: string, names: readonly string[] }>>} */
const PROGRAMS = {
	'redis-server': { variable: 'REDIS_SERVER', names: ['redis-server', 'valkey-server'] },
	parallel: { variable: 'GNU_PARALLEL', names: ['parallel'] },
};

/** @param {Program} program */
const find = (program) => onTheMachine(PROGRAMS[program].variable, PROGRAMS[program].names);

/**
 * The path of a program the tests need; throws where it is missing.
 * @param {Program} program
 */
export function programPath(program) {
	const path = find(program);
	if (path !== null) return path;
	throw new Error(
		`This needs ${program}. Install it (on Debian: apt-get install ${program}), or give its path ` +
			`in the environment variable ${PROGRAMS[program].variable}.`,
	);
}

/** Fetches what is missing, where we may. */
export async function fetchPrograms() {
	const all = /** @type {Program[]} */ (Object.keys(PROGRAMS));
	const missing = all.filter((program) => find(program) === null);
	if (missing.length === 0) return;
	process.stderr.write(`Not on this machine: ${missing.join(', ')}. Fetching …\n`);
	await fromDebian(missing);
}
