import { execFile } from 'node:child_process';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { ROOT } from '../../tool.js';
import type { Asked, Row } from '../row';
import type { Carried } from './child';
import type { Weight } from './heavy-jobs';

/** Seconds of processor time and MiB that a heavy job may take. */
const MOST = { work: 120, peak: 1024 };

const SMALL: Weight = { parts: 20, offcuts: 4 };
const HEAVY: readonly Weight[] = [
	{ parts: 20, offcuts: 5000 },
	{ parts: 2000, offcuts: 4 },
];

/** Heavy jobs planned and printed, each in a process of its own, beside a small one. */
export async function load({ note }: Asked): Promise<Row> {
	note('load: a small job');
	const small = await carried(SMALL);
	const found: string[] = [];
	const notes = [`${nameOf(SMALL)}: ${figures(small)}`];
	const all: Carried[] = [];
	for (const weight of HEAVY) {
		note(`load: ${nameOf(weight)}`);
		const heavy = await carried(weight);
		all.push(heavy);
		const times = work(heavy) / work(small);
		notes.push(`${nameOf(weight)}: ${figures(heavy)}; ${times.toFixed(1)} times the small one`);
		const wrong = amiss(weight, heavy);
		if (wrong.length > 0) found.push(`${nameOf(weight)}: ${wrong.slice(0, 3).join('; ')}`);
	}
	return {
		what: 'heavy jobs planned and printed',
		tried: HEAVY.length,
		survived: HEAVY.length - found.length,
		slowest: Math.max(...all.map(work)),
		peak: Math.max(...all.map(({ peak }) => peak)),
		found,
		notes,
		notCovered: 'the screen with such a job in it',
	};
}

const nameOf = ({ parts, offcuts }: Weight): string => `${parts} parts, ${offcuts} offcuts`;
const work = ({ planned, printed }: Carried): number => planned + printed;
const figures = ({ planned, printed, peak }: Carried): string =>
	`planned in ${planned.toFixed(1)} s of work, printed in ${printed.toFixed(1)} s, at most ${peak.toFixed(0)} MiB`;

function amiss({ parts }: Weight, heavy: Carried): string[] {
	return [
		...heavy.amiss,
		...(heavy.placed === parts ? [] : [`${heavy.placed} parts placed`]),
		...(work(heavy) > MOST.work ? [`took ${work(heavy).toFixed(0)} s of work`] : []),
		...(heavy.peak > MOST.peak ? [`took ${heavy.peak.toFixed(0)} MiB`] : []),
	];
}

async function carried({ parts, offcuts }: Weight): Promise<Carried> {
	const script = join('src', 'setup', 'trust', 'load', 'child.ts');
	const args = ['--import', 'tsx', script, String(parts), String(offcuts)];
	const env = { ...process.env, TSX_TSCONFIG_PATH: 'tsconfig.cli.json' };
	const { stdout } = await promisify(execFile)(process.execPath, args, { cwd: ROOT, env });
	return JSON.parse(stdout) as Carried;
}
