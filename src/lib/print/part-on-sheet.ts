import type { Bevel, Part } from '../design/part';
import type { Outline } from '../geometry/outline';
import { moved, turned } from '../geometry/turn';
import { printAngle } from '../measure/angle';
import type { Placed } from '../nest/types';
import type { Mark } from './drawing';
import type { Figures } from './figures';
import { fitLabel, type Label } from './label-fit';
import { line, onPaper, outlineSteps, ring, type View } from './path';
import type { Box } from './text-box';

/** A part as it lies on a sheet: its outline, its words, and the boxes of the words for whatever must keep clear. */
export interface PartOnSheet {
	readonly marks: readonly Mark[];
	readonly words: readonly Box[];
}

export function partOnSheet(part: Part, at: Placed, view: View, figures: Figures): PartOnSheet {
	const outlines = [shapeOf(part, at), ...part.holes.map((hole) => lain(hole, part, at))];
	const of = `part:${part.id}`;
	const shape: Mark = {
		kind: 'path',
		steps: outlineSteps(outlines, view),
		line: 'wide',
		fill: 'sheet',
		evenOdd: true,
		of,
	};
	const rings = outlines.map((o) => ring(o, view));
	const label = fitLabel(labels(part, at, figures), rings);
	return {
		marks: [shape, ...bevelLines(part, at, view), ...label.marks.map((m) => ({ ...m, of }))],
		words: label.boxes,
	};
}

function shapeOf(part: Part, at: Placed): Outline {
	if (part.outline !== undefined) return lain(part.outline, part, at);
	const { x, y, length, width } = at;
	return [
		{ x, y },
		{ x: x + length, y },
		{ x: x + length, y: y + width },
		{ x, y: y + width },
	];
}

/** An outline in the part's own frame, turned and moved to where the part lies. */
function lain(outline: Outline, part: Part, at: Placed): Outline {
	const shifts: Readonly<Record<Placed['turn'], readonly [number, number]>> = {
		0: [0, 0],
		90: [part.width, 0],
		180: [part.length, part.width],
		270: [0, part.length],
	};
	const shift = shifts[at.turn];
	return moved(turned(outline, at.turn), at.x + shift[0], at.y + shift[1]);
}

/** What may be written on the part, from all there is to say down to its mark alone. */
function labels(part: Part, at: Placed, figures: Figures): Label[] {
	const name = `${part.label} ${part.name}`;
	const size = figures.size(at.length, at.width);
	const show = part.show ? '● show face up' : '';
	const bevels = part.bevels.map((b) => bevelText(b, at.turn));
	const beside = [size, show].filter((t) => t !== '').join('  ');
	const all: Label[] = [
		{ name, lines: [beside, ...(bevels.length > 0 ? [longFace(part), ...bevels] : [])] },
		{ name, lines: [size, ...(show === '' ? [] : [show]), ...bevels] },
		{ name: part.label, lines: [size, ...bevels] },
		{ name, lines: [beside] },
		{ name, lines: [size] },
		{ name: part.label, lines: [size] },
		{ name: `${part.label}  ${size}`, lines: [] },
		{ name: part.label, lines: [] },
	];
	return all;
}

/** Which face has the long edges when it lies face up on the saw. */
function longFace(part: Part): string {
	const up = part.bevels.every((b) => b.long === 'outside') ? 'LONG face out' : 'LONG face in';
	return part.bevels.some((b) => b.long !== part.bevels[0]!.long) ? 'LONG faces differ' : up;
}

const SIDES = ['bottom', 'right', 'top', 'left'] as const;

/** The side of the placed rectangle that a side of the part has become. */
export function sideOnSheet(side: Bevel['side'], turn: Placed['turn']): Bevel['side'] {
	return SIDES[(SIDES.indexOf(side) + turn / 90) % 4]!;
}

function bevelText(bevel: Bevel, turn: Placed['turn']): string {
	return `${bevel.edge}: ${sideOnSheet(bevel.side, turn)} edge ${printAngle(bevel.tilt)}`;
}

/** A dashed line just inside each bevelled edge: the other face ends there or thereabouts. */
function bevelLines(part: Part, at: Placed, view: View): Mark[] {
	if (part.outline !== undefined) return [];
	const { x: left, y: bottom } = onPaper(at, view);
	const { x: right, y: top } = onPaper({ x: at.x + at.length, y: at.y + at.width }, view);
	const inset = 0.9;
	if (right - left < 4 * inset || bottom - top < 4 * inset) return [];
	const ends = {
		left: [left + inset, bottom, left + inset, top],
		right: [right - inset, bottom, right - inset, top],
		bottom: [left, bottom - inset, right, bottom - inset],
		top: [left, top + inset, right, top + inset],
	} as const;
	return part.bevels.map((bevel) => ({
		kind: 'path',
		steps: line(...ends[sideOnSheet(bevel.side, at.turn)]),
		line: 'dashed',
		of: `part:${part.id}`,
	}));
}
