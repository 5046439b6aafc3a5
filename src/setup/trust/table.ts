import type { Row } from './row';

const HEADS = ['what', 'tried', 'survived', 'lost', 'executed', 'crashed', 'slowest s', 'peak MiB'];

/** The table for a terminal or a note, each part's figures and findings under it. */
export function tableText(rows: readonly Row[]): string {
	const cells = [HEADS, ...rows.map(cellsOf)];
	const widths = HEADS.map((_, i) => Math.max(...cells.map((row) => (row[i] ?? '').length)));
	const line = (row: readonly string[]): string =>
		row
			.map((cell, i) => (i === 0 ? cell.padEnd(widths[0] ?? 0) : cell.padStart(widths[i] ?? 0)))
			.join('  ');
	return [...cells.map(line), '', ...rows.flatMap(under)].join('\n') + '\n';
}

function cellsOf(row: Row): string[] {
	const number = (n: number | undefined, places = 0): string => n?.toFixed(places) ?? '-';
	return [
		row.what,
		...[row.tried, row.survived, row.lost, row.executed, row.crashed].map((n) => number(n)),
		number(row.slowest, 2),
		number(row.peak),
	];
}

function under({ what, notes, found, notCovered }: Row): string[] {
	return [
		what,
		...notes.map((note) => `  ${note}`),
		`  not covered: ${notCovered}`,
		...found.map((one) => `  found: ${one}`),
	];
}
