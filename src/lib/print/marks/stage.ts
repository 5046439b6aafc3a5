import { type Ruler, toMm } from '../../measure';
import type { Outline, Point, Rect } from '../../geometry';
import {
	type Ink,
	type LineKind,
	type Mark,
	type PathMark,
	type TextMark,
	onPaper,
	outlineSteps,
	circlePath,
	type View,
	type Bounds,
} from '../drawing';
import { dimension } from './dimension';
import type { Figures } from '../wording';
import { standardScale } from './scales';

/** Margins round the work on paper, mm. */
export interface Margins {
	readonly left: number;
	readonly right: number;
	readonly top: number;
	readonly bottom: number;
}

/** Where the work of one drawing lies on paper. */
export interface Stage {
	readonly view: View;
	readonly box: Bounds;
	readonly width: number;
	readonly height: number;
	readonly scale: number;
}

/** Widest a panel drawing gets, and tallest. */
const ROOM = { width: 180, height: 170 };
/** Where no scale is named, the drawing is as large as one of these lets it be. */
const UNNAMED = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100];

interface Staging {
	/** Is it seen from behind? */
	readonly mirror?: boolean;
	readonly room?: { readonly width: number; readonly height: number };
	/** The ruler whose scales it takes, where its scale is named. */
	readonly named?: Ruler['unit'];
}

/**
 * A rectangle of the work at the largest scale that fits, left and right changed when it is seen
 * from behind.
 */
export function stageFor(
	work: Rect,
	margins: Margins,
	{ mirror = false, room = ROOM, named }: Staging = {},
): Stage {
	const across = toMm(work.length);
	const up = toMm(work.width);
	const wide = room.width - margins.left - margins.right;
	const tall = room.height - margins.top - margins.bottom;
	const most = Math.min(wide / across, tall / up);
	const scale =
		named === undefined
			? 1 / (UNNAMED.find((n) => 1 / n <= most) ?? 200)
			: standardScale(most, named);
	const [w, h] = [across * scale, up * scale];
	// The drawing keeps its width, so that the views of one panel stand under each other.
	const left = margins.left + (wide - w) / 2;
	const edge = mirror ? work.x + work.length : work.x;
	const x = left - (mirror ? -1 : 1) * toMm(edge) * scale;
	const y = margins.top + h + toMm(work.y) * scale;
	return {
		view: { x, y, scale, mirror },
		box: { x: left, y: margins.top, width: w, height: h },
		width: room.width,
		height: margins.top + h + margins.bottom,
		scale,
	};
}

export function outlineMark(
	outlines: readonly Outline[],
	view: View,
	line: LineKind,
	more: { readonly ink?: Ink; readonly fill?: Ink; readonly of?: string } = {},
): PathMark {
	return { kind: 'path', steps: outlineSteps(outlines, view), line, evenOdd: true, ...more };
}

export function openLine(
	points: readonly Point[],
	view: View,
	line: LineKind,
	ink?: Ink,
): PathMark {
	const steps = points.map((p, i) => {
		const at = onPaper(p, view);
		return [i === 0 ? 'M' : 'L', at.x, at.y] as const;
	});
	return { kind: 'path', steps, line, ...(ink ? { ink } : {}) };
}

export const TEXT = 2.9;

export function words(x: number, y: number, text: string, more: Partial<TextMark> = {}): TextMark {
	return { kind: 'text', x, y, text, size: TEXT, ...more };
}

/** A circle with a number in it. */
export function balloon(x: number, y: number, text: string): Mark[] {
	return [
		{ kind: 'path', steps: circlePath(x, y, 2.2), line: 'narrow', fill: 'sheet', ink: 'pencil' },
		words(x, y + 0.95, text, { anchor: 'middle', size: 2.6 }),
	];
}

/** A cross through a hole's middle. */
export function centreMark(p: Point, view: View, reach: number): Mark {
	const { x, y } = onPaper(p, view);
	return {
		kind: 'path',
		steps: [
			['M', x - reach, y],
			['L', x + reach, y],
			['M', x, y - reach],
			['L', x, y + reach],
		],
		line: 'hair',
	};
}

/** A rectangle of the work as it lies on paper. */
export function boxOf(work: Rect, view: View): Bounds {
	const a = onPaper({ x: work.x, y: work.y }, view);
	const b = onPaper({ x: work.x + work.length, y: work.y + work.width }, view);
	return {
		x: Math.min(a.x, b.x),
		y: Math.min(a.y, b.y),
		width: Math.abs(a.x - b.x),
		height: Math.abs(a.y - b.y),
	};
}

/**
 * Overall width below and height to the right, one line further out for each; `step` counts the
 * lines.
 */
export function overall(
	work: Rect,
	stage: Stage,
	step: number,
	name: string,
	figures: Figures,
): Mark[] {
	const b = boxOf(work, stage.view);
	const whole = stage.box;
	const out = 11 + step * 6;
	const below = whole.y + whole.height + out;
	const beside = whole.x + whole.width + out;
	const label = (n: number): string => `${name} ${figures.bench(n)}`;
	return [
		...dimension(
			{ x: b.x + b.width, y: b.y + b.height },
			{ x: b.x, y: b.y + b.height },
			-(below - b.y - b.height),
			label(work.length),
		),
		...dimension(
			{ x: b.x + b.width, y: b.y + b.height },
			{ x: b.x + b.width, y: b.y },
			beside - b.x - b.width,
			label(work.width),
		),
	];
}
