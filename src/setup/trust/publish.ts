import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { TrustLine } from '../../lib/trust';
import { ROOT } from '../tool.js';
import type { Row } from './row';

export type Runs = Record<string, { readonly date: string; readonly rows: readonly Row[] }>;

/** What a reader of the app is told of hostile input, however many runs it was spread over. */
const HOSTILE: Readonly<Record<string, string>> = {
	hostile: 'Hostile files and drawings, read, planned, drawn and printed',
	merges: 'Hostile updates of other devices, merged, planned and drawn',
};

const FILE = join(ROOT, 'shared', 'trust.json');

/**
 * Leaves the figures where the app and the guides read them. What was told before of proofs that
 * were not run again stays, with its date.
 */
export function publish(runs: Runs): void {
	const lines = Object.entries(runs).flatMap(([part, { date, rows }]) =>
		part in HOSTILE ? [together(part, rows, date)] : rows.map((row) => lineOf(row, date)),
	);
	const told = JSON.parse(readFileSync(FILE, 'utf8')) as { readonly lines: readonly TrustLine[] };
	const others = told.lines.filter((old) => lines.every(({ what }) => what !== old.what));
	writeFileSync(FILE, JSON.stringify({ lines: [...lines, ...others] }, null, '\t') + '\n');
}

function lineOf(row: Row, date: string): TrustLine {
	const { what, tried, found, notes, notCovered } = row;
	const isMutants = what.startsWith('mutants');
	return {
		what: isMutants ? what.replace('mutants of', 'Faults put into') : capital(what),
		date,
		tried,
		stood: isMutants ? tried - row.survived : row.survived,
		said: [
			...(isMutants ? notes.slice(0, 1) : notes),
			...(found.length > 0 ? [`not as it should be: ${found.length}`] : []),
			`not covered: ${notCovered}`,
		],
	};
}

function together(part: string, rows: readonly Row[], date: string): TrustLine {
	const sum = (of: (row: Row) => number): number => rows.reduce((n, row) => n + of(row), 0);
	const most = (of: (row: Row) => number): number => Math.max(...rows.map(of));
	const found = rows.flatMap((row) => row.found);
	const slow = found.filter((one) => /^[a-z]+ \d+: took [\d.]+ s of work$/.test(one)).length;
	return {
		what: HOSTILE[part] ?? part,
		date,
		tried: sum((row) => row.tried),
		stood: sum((row) => row.survived),
		said: [
			`${sum((row) => row.ends?.['planned'] ?? 0)} planned and drawn, ${sum((row) => row.ends?.['answered'] ?? 0)} laid out, ${sum((row) => row.ends?.['refused'] ?? 0)} refused in words where they were read`,
			`${sum((row) => row.crashed ?? 0)} crashed or had to be stopped; ${slow} ended after more than 2 s of work; ${found.length - slow - sum((row) => row.crashed ?? 0)} otherwise wrong`,
			`slowest ${most((row) => row.slowest ?? 0).toFixed(1)} s of work, at most ${most((row) => row.peak ?? 0).toFixed(0)} MiB`,
			`not covered: ${rows[0]?.notCovered ?? ''}`,
		],
	};
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
