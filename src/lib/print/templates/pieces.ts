import type { Bounds } from '../drawing';
import type { Template } from './template';
import { toTrace } from './features';

/** A part of a template that is printed: what lies in its window, full size. */
export interface TracedPiece {
	/** 'A', 'B'; empty where it is all of the template. */
	readonly name: string;
	/** From the template's upper left corner, mm. */
	readonly window: Bounds;
}

/** Paper round a template that is printed whole, mm. */
const ROUND = 6;

/**
 * The windows of a template: all of it where a page holds that, else round all that has to be
 * traced. Their edges lie on whole steps from the template's lower left corner, which is what they
 * are placed by. None where nothing has to be traced.
 */
export function piecesOf(
	template: Template,
	room: { readonly width: number; readonly height: number },
	step: number,
): TracedPiece[] {
	const { width, height } = template;
	const whole = { x: -ROUND, y: -ROUND, width: width + 2 * ROUND, height: height + 2 * ROUND };
	const traced = toTrace(template.traced, whole);
	if (traced.length === 0) return [];
	if (holdsPiece(whole, room)) return [{ name: '', window: whole }];
	const windows = traced.map((box) => onSteps(box, template, step)).sort(reading);
	return windows.map((window, i) => ({ name: letters(i), window }));
}

export function holdsPiece(
	window: { readonly width: number; readonly height: number },
	room: { readonly width: number; readonly height: number },
): boolean {
	return window.width <= room.width && window.height <= room.height;
}

/**
 * Grown to the next steps, counted to the right and up from the lower left corner, and no farther
 * than the template's own edges, which are there to be laid to.
 */
function onSteps(
	box: Bounds,
	{ width, height }: Pick<Template, 'width' | 'height'>,
	step: number,
): Bounds {
	const down = (n: number): number => Math.max(0, Math.floor(n / step + 1e-9) * step);
	const up = (n: number, most: number): number => Math.min(most, Math.ceil(n / step - 1e-9) * step);
	const [left, right] = [down(box.x), up(box.x + box.width, width)];
	const [low, high] = [down(height - box.y - box.height), up(height - box.y, height)];
	return { x: left, y: height - high, width: right - left, height: high - low };
}

/** From the top, from the left. */
function reading(a: Bounds, b: Bounds): number {
	return a.y - b.y || a.x - b.x;
}

/** Without I and O, which read as figures. */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ';

/** A, B, … Z, AA. */
function letters(i: number): string {
	const first = Math.floor(i / LETTERS.length);
	return (first === 0 ? '' : letters(first - 1)) + LETTERS.charAt(i % LETTERS.length);
}
