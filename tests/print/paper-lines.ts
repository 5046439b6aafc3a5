import type { ReadPage } from './pdf-reader';

export interface Line {
	readonly text: string;
	readonly x: number;
	readonly y: number;
	/** Where it ends, mm. */
	readonly end: number;
}

/** Letters nearer than this are of one text, mm: a reader parts it where the face changes. */
const JOINED = 0.9;

/** The texts of a page as an eye reads them, from the top, from the left. */
export function textLines({ texts }: ReadPage): Line[] {
	const lines: Line[] = [];
	for (const t of [...texts].sort((a, b) => a.y - b.y || a.x - b.x)) {
		const end = t.x + t.width;
		const text = t.text.replaceAll('\u00a0', ' ');
		const last = lines.findLast(
			(l) => Math.abs(l.y - t.y) < 0.05 && Math.abs(t.x - l.end) < JOINED,
		);
		if (last === undefined) lines.push({ text, x: t.x, y: t.y, end });
		else lines.splice(lines.indexOf(last), 1, { ...last, text: glued(last, text, t.x), end });
	}
	return lines;
}

function glued({ text, end }: { text: string; end: number }, more: string, x: number): string {
	const gap = x - end > 0.35 && !text.endsWith(' ') && !more.startsWith(' ') ? ' ' : '';
	return text + gap + more;
}

const CUT = /^\d+(–\d+)? (trim|rip|crosscut|slant)$/;
/** Left edge of what is printed on a page, mm. */
const MARGIN = 20;
/** From the foot of a page to its title block, mm. */
const FOOT = 38;

/** The rows of the lists of cuts under a sheet's title, as cells, on whatever pages they stand. */
export function cutRows(pages: readonly ReadPage[], title: string): string[][] {
	const rows: string[][] = [];
	let under = false;
	for (const page of pages) {
		const foot = (page.height * 25.4) / 72 - FOOT;
		const lines = textLines(page).filter((l) => l.y < foot);
		lines.forEach((line, i) => {
			const atEdge = line.x < MARGIN + 1;
			if (atEdge && /^(Sheet \d+ of \d+: |Parts$)/.test(line.text)) under = line.text === title;
			if (!under || !CUT.test(line.text)) return;
			const rest = lines.slice(i);
			const next = rest.find((l) => l.y > line.y + 0.5 && (CUT.test(l.text) || l.x < line.x - 1));
			const end = (next?.y ?? Infinity) - 2.5;
			rows.push(cells(lines.filter((l) => l.x >= line.x - 0.1 && l.y > line.y - 3 && l.y < end)));
		});
	}
	return rows;
}

/** Lines of one cell stand one under the other. */
function cells(lines: readonly Line[]): string[] {
	const found: { x: number; text: string }[] = [];
	for (const { x, text } of [...lines].sort((a, b) => a.y - b.y)) {
		const cell = found.find((c) => Math.abs(c.x - x) < 0.3);
		if (cell === undefined) found.push({ x, text });
		else cell.text += ` ${text}`;
	}
	return found.sort((a, b) => a.x - b.x).map(({ text }) => text);
}
