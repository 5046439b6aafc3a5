import type { Drawing, PathMark, TextMark } from '../../src/lib/print/drawing/drawing';
import { crossesOn } from './holes-on-paper';
import { type Line, textLines } from './paper-lines';
import { worked } from './parts/bench-from-words';
import type { ReadPage } from './pdf-reader';
import { figure } from './sheet/saw-from-words';

/*
 * Cards of parts found again on printed pages: every word at its place beside the others, and every
 * hole that the words tell of under a cross.
 */

interface Found {
	readonly page: ReadPage;
	/** The card's upper left corner on it, mm. */
	readonly x: number;
	readonly y: number;
}

/** Reader and writer round to hundredths; a word that stands elsewhere is off by a line. */
const OFF = 0.15;

/** Cards of this width part where a page ends. */
const WHOLE_PAGE = 180;

/** Words that begin where they stand: names, sizes, what is done and where. */
const saidOn = ({ marks }: Drawing): TextMark[] =>
	marks.filter(
		(m): m is TextMark =>
			m.kind === 'text' && (m.turn ?? 0) === 0 && (m.anchor ?? 'start') === 'start',
	);

const READ = new WeakMap<ReadPage, Line[]>();

/** The lines of a page, read once for all cards that are looked for on it. */
function linesOn(page: ReadPage): Line[] {
	const lines = READ.get(page) ?? textLines(page);
	READ.set(page, lines);
	return lines;
}

const plain = (text: string): string => text.replaceAll('\u00a0', ' ').trim();

/** Where a card is printed, all its words at their places; undefined where one is missing. */
export function cardOn(pages: readonly ReadPage[], card: Drawing): Found | undefined {
	const [first, ...rest] = saidOn(card);
	const parted = card.width >= WHOLE_PAGE;
	const everywhere = parted ? pages.flatMap(linesOn) : [];
	for (const page of pages) {
		const lines = linesOn(page);
		for (const line of lines.filter(({ text }) => plain(text) === plain(first!.text))) {
			const at = { page, x: line.x - first!.x, y: line.y - first!.y };
			const stands = (mark: TextMark): boolean =>
				parted
					? everywhere.some(({ text }) => plain(text) === plain(mark.text))
					: lines.some((l) => isAt(l, mark, at));
			if (rest.every(stands)) return at;
		}
	}
	return undefined;
}

function isAt(line: Line, mark: TextMark, { x, y }: Found): boolean {
	return (
		Math.abs(line.x - x - mark.x) < OFF &&
		Math.abs(line.y - y - mark.y) < OFF &&
		plain(line.text) === plain(mark.text)
	);
}

/** Holes that a card's words tell of, and those of them that lie under no cross of its page. */
export function holesMissing(
	card: Drawing,
	found: Found,
	step: number,
): { of: number; missing: string[] } {
	const crosses = crossesOn(found.page);
	const view = viewOf(card);
	const holes = worked(card).made.filter((m) => m.verb === 'Hole');
	const missing = holes.flatMap(({ name, places }) =>
		places
			.filter(([right, up]) => {
				const x = found.x + view.x + right * view.scale;
				const y = found.y + view.y - up * view.scale;
				// Half a step each of the hole's own figure and of the one that gives the scale.
				const off = 0.1 + step * view.scale;
				return !crosses.some(([a, b]) => Math.abs(a - x) < off && Math.abs(b - y) < off);
			})
			.map((at) => `${card.title}: ${name} at ${at.join(', ')}`),
	);
	return { of: holes.reduce((sum, { places }) => sum + places.length, 0), missing };
}

/** From the card's running figures: where they start, and mm on paper of one unit. */
function viewOf({ marks, title }: Drawing): { x: number; y: number; scale: number } {
	const rings = marks.filter(
		(m): m is PathMark => m.kind === 'path' && m.fill === 'sheet' && m.of === undefined,
	);
	const spots = rings.map(middleOf);
	const low = spots.reduce((a, b) => (b[1] > a[1] ? b : a));
	const left = spots.reduce((a, b) => (b[0] < a[0] ? b : a));
	const along = marks.filter(
		(m): m is TextMark => m.kind === 'text' && m.turn === 90 && m.anchor === 'end',
	);
	const longest = Math.max(...along.map((m) => figure(m.text)));
	const stroke = marks.filter(
		(m): m is PathMark =>
			m.kind === 'path' && m.ink === 'pencil' && m.line === 'narrow' && level(m, low[1]),
	);
	const ends = stroke.flatMap(({ steps }) => steps.map((s) => Number(s[1])));
	if (ends.length === 0) throw new Error(`no running figures: ${title}`);
	return { x: low[0], y: left[1], scale: (Math.max(...ends) - low[0]) / longest };
}

/** A line of two ends, both at that height. */
const level = ({ steps }: PathMark, y: number): boolean =>
	steps.length === 2 && steps.every((s) => Math.abs(Number(s[2]) - y) < 1e-6);

function middleOf({ steps }: PathMark): readonly [number, number] {
	const xs = steps.flatMap((s) => (s.length >= 3 ? [Number(s.at(-2))] : []));
	const ys = steps.flatMap((s) => (s.length >= 3 ? [Number(s.at(-1))] : []));
	return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
}
