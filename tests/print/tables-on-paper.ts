import { expect } from 'vitest';
import { type Line, textLines } from './paper-lines';
import type { ReadPage } from './pdf-reader';

/** A table as it should be read: its heads, and under some of them what stands there, downwards. */
export interface Wanted {
	readonly heads: readonly string[];
	readonly columns: Readonly<Record<string, readonly string[]>>;
}

/** From the foot of a page to its title block, mm. */
const FOOT = 38;
/** Where two baselines are farther apart than this, something else begins; mm. */
const GAP = 9;
const NEAR = 0.4;

/** One page's part of a table: the text under each head. */
type Piece = Readonly<Record<string, string>>;

/** Every table with these heads on the pages, in order, page by page. */
function piecesOf(pages: readonly ReadPage[], heads: readonly string[]): Piece[] {
	return pages.flatMap((page) => {
		const foot = (page.height * 25.4) / 72 - FOOT;
		const lines = textLines(page).filter((l) => l.y < foot);
		const starts = lines.filter((l) => l.text === heads[0]);
		return starts.flatMap((start) => {
			const row = lines.filter((l) => Math.abs(l.y - start.y) < NEAR && l.x >= start.x - NEAR);
			const texts = row.sort((a, b) => a.x - b.x).map((l) => l.text);
			if (texts.join('|') !== heads.join('|')) return [];
			return [pieceUnder(row, bodyUnder(lines, start))];
		});
	});
}

/** The lines of a table, down to the next head or gap. */
function bodyUnder(lines: readonly Line[], head: Line): Line[] {
	const below = lines.filter((l) => l.y > head.y + NEAR).sort((a, b) => a.y - b.y);
	let last = head.y;
	return below.filter(({ y }) => {
		if (y - last > GAP) return false;
		last = y;
		return true;
	});
}

function pieceUnder(heads: readonly Line[], body: readonly Line[]): Piece {
	return Object.fromEntries(
		heads.map((head) => {
			const own = body.filter(
				(l) => Math.abs(l.x - head.x) < NEAR || Math.abs(l.end - head.end) < NEAR,
			);
			return [head.text, own.map((l) => l.text).join(' ')];
		}),
	);
}

/**
 * Each of the tables stands on the pages, in this order, every figure under its head as it should
 * be. Returns how many figures were held against them.
 */
export function expectTables(pages: readonly ReadPage[], wanted: readonly Wanted[]): number {
	const turns = new Map<string, Piece[]>();
	let held = 0;
	for (const { heads, columns } of wanted) {
		const key = heads.join('|');
		const left = turns.get(key) ?? piecesOf(pages, heads);
		turns.set(key, left);
		const texts = Object.entries(columns).map(
			([head, cells]) => [head, cells.filter((t) => t !== '').join(' ')] as const,
		);
		const read: Record<string, string> = {};
		const isShort = (): boolean =>
			texts.some(([head, text]) => (read[head] ?? '').length < text.length);
		do {
			const piece = left.shift();
			expect(piece, `a table ${key}`).toBeDefined();
			for (const [head, text] of Object.entries(piece!))
				read[head] = [read[head] ?? '', text].filter((t) => t !== '').join(' ');
		} while (isShort() && left.length > 0);
		// What comes after it, such as a sum, begins a word of its own.
		for (const [head, text] of texts.filter(([, t]) => t !== ''))
			expect(`${read[head]!} `.slice(0, text.length + 1), `${key}, under ${head}`).toBe(`${text} `);
		held += Object.values(columns).reduce((sum, cells) => sum + cells.length, 0);
	}
	return held;
}
