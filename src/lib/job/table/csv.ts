/** One row of a CSV text: its cells, the line it starts on, counted from 1, and where it stands. */
export interface CsvRow {
	readonly line: number;
	readonly cells: readonly string[];
	/** From and to in the text given, its line end within. */
	readonly from: number;
	readonly to: number;
}

export interface CsvFault {
	readonly line: number;
	readonly what: string;
	readonly fix: string;
}

export type Delimiter = ',' | ';' | '\t';

/**
 * Takes a CSV text apart by RFC 4180: quoted cells, doubled quotes, line ends inside quotes; any
 * line end, and the delimiter given. Empty rows are passed over. Stops at the first fault, since
 * after a stray quote nothing can be told for certain.
 */
export function readCsv(
	text: string,
	delimiter: Delimiter,
): { readonly rows: readonly CsvRow[]; readonly fault: CsvFault | null } {
	const rows: CsvRow[] = [];
	const scan: Scan = { text, at: text.startsWith('\ufeff') ? 1 : 0, line: 1 };
	while (scan.at < scan.text.length) {
		const { line, at: from } = scan;
		const cells: string[] = [];
		for (let more = true; more;) {
			const cell = scan.text[scan.at] === '"' ? quoted(scan, delimiter) : bare(scan, delimiter);
			if (typeof cell !== 'string') return { rows, fault: cell };
			cells.push(cell);
			more = scan.text[scan.at] === delimiter;
			if (more) scan.at++;
		}
		endLine(scan);
		if (cells.some((cell) => cell.trim() !== '')) rows.push({ line, cells, from, to: scan.at });
	}
	return { rows, fault: null };
}

interface Scan {
	readonly text: string;
	at: number;
	line: number;
}

function bare(scan: Scan, delimiter: Delimiter): string {
	const from = scan.at;
	while (scan.at < scan.text.length && !ends(scan.text.charAt(scan.at), delimiter)) scan.at++;
	return scan.text.slice(from, scan.at);
}

function quoted(scan: Scan, delimiter: Delimiter): string | CsvFault {
	const opened = scan.line;
	const pieces: string[] = [];
	for (;;) {
		const close = scan.text.indexOf('"', scan.at + 1);
		if (close < 0) {
			return {
				line: opened,
				what: 'The quotation mark opened in this row is never closed.',
				fix: 'Close it, or write two of them for one that belongs to the text.',
			};
		}
		const piece = scan.text.slice(scan.at + 1, close);
		scan.line += piece.split(/\r\n|\r|\n/).length - 1;
		pieces.push(piece);
		scan.at = close + 1;
		if (scan.text[scan.at] !== '"') break;
		pieces.push('"');
	}
	const next = scan.text[scan.at];
	if (next === undefined || ends(next, delimiter)) return pieces.join('');
	return {
		line: scan.line,
		what: `After a closing quotation mark there is this: ${scan.text.slice(scan.at, scan.at + 12)}`,
		fix: 'Write two quotation marks for one that belongs to the text.',
	};
}

function ends(c: string, delimiter: Delimiter): boolean {
	return c === delimiter || c === '\n' || c === '\r';
}

function endLine(scan: Scan): void {
	if (scan.text[scan.at] === '\r') scan.at++;
	if (scan.text[scan.at] === '\n') scan.at++;
	scan.line++;
}

/**
 * What a spreadsheet would take for a formula and run (a known way to harm whoever opens the file).
 */
const FORMULA = /^'*[=+\-@\t\r＝＋－＠]/;
const NUMBER = /^-?\d+([.,]\d+)?$/;

/**
 * A CSV text by RFC 4180. A text that a spreadsheet would run as a formula gets an apostrophe in
 * front of it.
 */
export function writeCsv(
	rows: readonly (readonly (string | number)[])[],
	delimiter: Delimiter = ',',
): string {
	return rows
		.map((row) => row.map((cell) => writeCell(cell, delimiter)).join(delimiter) + '\r\n')
		.join('');
}

function writeCell(cell: string | number, delimiter: Delimiter): string {
	const plain = String(cell);
	const safe = FORMULA.test(plain) && !NUMBER.test(plain) ? `'${plain}` : plain;
	const needsQuotes = safe.includes(delimiter) || /["\r\n]|^\s|\s$/.test(safe);
	return needsQuotes ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** The cell as it was before {@link writeCsv} made it safe. */
export function unguarded(cell: string): string {
	return cell.startsWith("'") && FORMULA.test(cell) ? cell.slice(1) : cell;
}
