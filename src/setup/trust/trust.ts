import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { ROOT } from '../tool.js';
import { hostile, merges } from './hostile/hostile';
import { killedBrowser } from './kills/browser/browser';
import { killedCommands } from './kills/command-line';
import { killedServers } from './kills/servers';
import { killedShops } from './kills/shop';
import { licences } from './licences/part';
import { book } from './load/book';
import { load } from './load/load';
import { loadedServers } from './load/servers';
import { loadedShop } from './load/shop';
import { mutants } from './mutants/mutants';
import { publish, type Runs } from './publish';
import type { Part, Row } from './row';
import { nodes } from './same/nodes';
import { builds, same } from './same/same';
import { tableText } from './table';

const PARTS: Readonly<Record<string, Part>> = {
	hostile,
	merges,
	mutants,
	kills: killedCommands,
	'kills-browser': killedBrowser,
	'kills-shop': killedShops,
	'kills-servers': killedServers,
	same,
	builds,
	nodes,
	load,
	'load-servers': loadedServers,
	'load-shop': loadedShop,
	book,
	licences,
};

const USAGE = `npm run trust -- [options]

The proofs in their long form. A table goes to standard output and, part by part, to out/trust.json; cases that did not
stand are left in out/trust/. What the app tells of them, shared/trust.json, is written anew.

  --part NAME    ${Object.keys(PARTS).join(', ')}; several with commas; all of them when absent
  --count N      cases of each part instead of its long number
  --seed N       number of the first case (1)
  --lanes N      processes beside each other (2)
`;

const { values } = parseArgs({
	options: {
		part: { type: 'string' },
		count: { type: 'string' },
		seed: { type: 'string', default: '1' },
		lanes: { type: 'string', default: '2' },
		help: { type: 'boolean', default: false },
	},
});

const OUT = join(ROOT, 'out', 'trust.json');

function note(line: string): void {
	if (process.stderr.isTTY) process.stderr.write(`\r\u001b[K${line}`);
}

function number(text: string | undefined): number | null {
	return text !== undefined && /^\d{1,9}$/.test(text) && Number(text) > 0 ? Number(text) : null;
}

/** The lines of this part; those of other numbers, run before, stay beside them. */
function keep(part: string, rows: readonly Row[], date: string): void {
	const before = existsSync(OUT) ? (JSON.parse(readFileSync(OUT, 'utf8')) as Runs) : {};
	const others = (before[part]?.rows ?? []).filter((old) => rows.every((r) => r.what !== old.what));
	mkdirSync(join(ROOT, 'out'), { recursive: true });
	const kept: Runs = { ...before, [part]: { date, rows: [...others, ...rows] } };
	writeFileSync(OUT, JSON.stringify(kept, null, '\t') + '\n');
	publish(kept);
}

async function main(): Promise<number> {
	const names = values.part?.split(',') ?? Object.keys(PARTS);
	const [seed, lanes] = [number(values.seed), number(values.lanes)];
	const count = values.count === undefined ? undefined : number(values.count);
	const unknown = names.some((name) => !Object.hasOwn(PARTS, name));
	if (values.help || unknown || seed === null || lanes === null || count === null) {
		process.stderr.write(USAGE);
		return values.help ? 0 : 2;
	}
	const all: Row[] = [];
	for (const name of names) {
		const part = PARTS[name];
		if (!part) continue;
		const made = await part({ seed, lanes, note, ...(count === undefined ? {} : { count }) });
		const rows = 'what' in made ? [made] : made;
		keep(name, rows, new Date().toISOString().slice(0, 10));
		all.push(...rows);
	}
	note('');
	process.stdout.write(tableText(all));
	return all.every((row) => row.found.length === 0) ? 0 : 1;
}

process.exitCode = await main();
