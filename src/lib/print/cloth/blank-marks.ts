import type { Blank, BlankMark } from '../../wrap';
import {
	type Ink,
	type LineKind,
	type Mark,
	hatch,
	onPaper,
	polygon,
	polyline,
	rect,
	type Spot,
	type View,
	textWidth,
} from '../drawing';

/** How each kind of mark on the back of a cloth is drawn, and what the legend calls it. */
interface Style {
	readonly line: LineKind;
	readonly ink?: Ink;
	readonly says: string;
	/** Cloth that falls away. */
	readonly away?: true;
}

const STYLES: Readonly<Record<BlankMark['kind'], Style>> = {
	fold: { line: 'dashed', says: 'fold, over the front edge' },
	trim: { line: 'phantom', says: 'trim here, over the groove' },
	notch: { line: 'narrow', says: 'cut out', away: true },
	slit: { line: 'wide', says: 'slit' },
	window: { line: 'narrow', says: 'cut out once it lies', away: true },
	hole: { line: 'narrow', says: 'hole, cut once it is glued' },
	seam: { line: 'chain', says: 'seam: cut through both layers' },
	step: { line: 'dashed', ink: 'pencil', says: 'edge of a layer' },
	bend: { line: 'dashed', says: 'bend, over the back edge' },
	centre: { line: 'chain', ink: 'pencil', says: 'centre' },
};

/** The lines on the back of a blank, cut-outs hatched, lightest first so that cuts lie on top. */
export function blankMarks(blank: Blank, view: View): Mark[] {
	const order: BlankMark['kind'][] = ['step', 'centre', 'trim', 'bend', 'fold'];
	const rank = (m: BlankMark) => {
		const r = order.indexOf(m.kind);
		return r < 0 ? order.length : r;
	};
	return [...blank.marks].sort((a, b) => rank(a) - rank(b)).flatMap((m) => blankMark(m, view));
}

function blankMark(mark: BlankMark, view: View): Mark[] {
	const style = STYLES[mark.kind];
	const spots = mark.line.map((p) => onPaper(p, view));
	const stroke: Mark = {
		kind: 'path',
		steps: mark.closed ? polygon(spots) : polyline(spots),
		line: style.line,
		...(style.ink ? { ink: style.ink } : {}),
	};
	return style.away && mark.closed ? [hatch('waste', [spots], 0.7), stroke] : [stroke];
}

/** Cloth that is cut out; what is written there falls away. */
const OUT: readonly BlankMark['kind'][] = ['notch', 'window', 'hole'];

/**
 * What words must keep off: holes as rings; every other mark as the line it is, there and back, for
 * there is cloth on both sides of it.
 */
export function clearOfMarks(marks: readonly BlankMark[], view: View): Spot[][] {
	return marks.map(({ kind, line, closed }) => {
		const spots = line.map((p) => onPaper(p, view));
		if (closed && OUT.includes(kind)) return spots;
		const way = closed ? [...spots, ...spots.slice(0, 1)] : spots;
		return [...way, ...[...way].reverse()];
	});
}

const TEXT = 2.7;
const SAMPLE = 9;
const LEGEND_ROW = 4.2;

/**
 * What the lines mean, in words, for those on this blank: rows of samples within the width given.
 */
export function blankLegend(
	blank: Blank,
	x: number,
	y: number,
	width: number,
): { marks: Mark[]; height: number } {
	const kinds = Object.keys(STYLES) as BlankMark['kind'][];
	const shown = kinds.filter((k) => blank.marks.some((m) => m.kind === k));
	const marks: Mark[] = [];
	let at = x;
	let row = y;
	for (const kind of shown) {
		const style = STYLES[kind];
		const wide = SAMPLE + 1.5 + textWidth(style.says, TEXT) + 6;
		if (at > x && at + wide > x + width) [at, row] = [x, row + LEGEND_ROW];
		marks.push(...sample(style, at, row), {
			kind: 'text',
			x: at + SAMPLE + 1.5,
			y: row + 2.6,
			text: style.says,
			size: TEXT,
			ink: 'pencil',
		});
		at += wide;
	}
	return { marks, height: shown.length > 0 ? row - y + LEGEND_ROW : 0 };
}

function sample(style: Style, x: number, y: number): Mark[] {
	const ink = style.ink ? { ink: style.ink } : {};
	if (!style.away)
		return [
			{
				kind: 'path',
				steps: polyline([
					{ x, y: y + 1.7 },
					{ x: x + SAMPLE, y: y + 1.7 },
				]),
				line: style.line,
				...ink,
			},
		];
	const box = rect(x + 2, y + 0.3, 5, 2.7);
	const ring = [
		{ x: x + 2, y: y + 0.3 },
		{ x: x + 7, y: y + 0.3 },
		{ x: x + 7, y: y + 3 },
		{ x: x + 2, y: y + 3 },
	];
	return [hatch('waste', [ring], 0.4), { kind: 'path', steps: box, line: style.line }];
}
