import {
	chain,
	area,
	bounds,
	crossings,
	type Corner,
	onOneLine,
	type Outline,
	type Rect,
	tidy,
	type Tidied,
	corner,
	moved,
	scaled,
} from '../../geometry';
import type { OutlineShape } from '../../job';
import { TICKS_PER_MM, type Ruler } from '../../measure';
import { drawn, sayHair, type Complaint, type Drawn, type Undrawn } from '../shape';
import { check, stop, type DrawingFile } from './drawing-file';
import { gapsBetween } from './gaps';
import { knownFault } from './known-length';

/** What a person states of a drawing. */
export interface Stated {
	/** Its unit; null for the one the file names. */
	readonly unit: { readonly mm: number; readonly name: string } | null;
	readonly scale: number;
	readonly known: Extract<OutlineShape, { kind: 'svg' }>['known'];
	readonly join: number; // ticks
	/** What it is measured with. */
	readonly ruler: Ruler;
}

/** Farthest a corner may lie from the origin: 100 m. */
const FARTHEST = 100_000 * TICKS_PER_MM;

/**
 * The outline of a drawing: loose ends joined, the largest closed outline taken, at its true size
 * on the grid, cleaned, its lower left corner at 0,0. What was left out, joined or cleaned is said.
 */
export function finishShape(file: DrawingFile, stated: Stated): Drawn | Undrawn {
	if (file.complaints.some((c) => c.kind === 'stop'))
		return { outline: null, complaints: file.complaints };
	const nothing = (open: number, gaps: string): Undrawn => ({
		outline: null,
		complaints: [...file.complaints, nothingClosed(file, open, gaps)],
	});
	if (file.runs.length === 0) return nothing(0, '');
	const unit = stated.unit ?? file.says;
	if (!unit) return { outline: null, complaints: [...file.complaints, unitAsked(file)] };
	const { ruler, known } = stated;
	const ticks = unit.mm * stated.scale * TICKS_PER_MM;
	const chained = chain(file.runs, stated.join / ticks);
	const sized = chained.closed.map((c) => sizedUp(c, ticks)).filter((o) => o !== null);
	const best = largest(sized);
	const gaps = gapsBetween(chained.open, file, { ticks, ruler });
	if (!best) return nothing(chained.open.length, gaps);
	const clean = tidy(best);
	const box = bounds(clean.outline);
	const outline = moved(clean.outline, -box.x, -box.y);
	return drawn(outline, [
		...file.complaints,
		...unitSaid(file, stated),
		...leftOut(sized.length - 1, chained.open.length, gaps),
		...cleaned(clean, chained.joined, ruler),
		...knownFault(outline, known, ruler),
	]);
}

/**
 * The outline that takes up the most room: its area, or where it crosses itself, so that its lobes
 * take from each other, the rectangle round it. None of no area at all.
 */
function largest(outlines: readonly Outline[]): Outline | null {
	const rooms = outlines.map((o) => ({ o, room: roomOf(bounds(o)) }));
	let best: { readonly o: Outline; readonly size: number } | null = null;
	for (const { o, room } of rooms.sort((a, b) => b.room - a.room)) {
		if (best && room <= best.size) break;
		const plain = Math.abs(area(o));
		const crosses = plain < room && !onOneLine(o) && crossings(o, 1).length > 0;
		const size = crosses ? room : plain;
		if (size > (best?.size ?? 0)) best = { o, size };
	}
	return best?.o ?? null;
}

const roomOf = (r: Rect): number => r.length * r.width;

/** On the grid; null when a corner lies out of reach. */
function sizedUp(corners: readonly Corner[], ticks: number): Outline | null {
	const far = corners.some(
		(c) => !(Math.abs(c.x * ticks) <= FARTHEST && Math.abs(c.y * ticks) <= FARTHEST),
	);
	if (far) return null;
	return scaled(
		corners.map((c) => corner(c, straightened(c.bulge ?? 0))),
		ticks,
	);
}

/** A bulge of almost nothing or beyond all measure is a fault of the file. */
function straightened(bulge: number): number {
	return Math.abs(bulge) < 1e-6 || Math.abs(bulge) > 1e3 ? 0 : bulge;
}

function nothingClosed(file: DrawingFile, open: number, gaps: string): Complaint {
	if (file.runs.length === 0)
		return stop(
			file.hidden > 0
				? 'There is no line in the drawing that can be seen: what is in it is hidden.'
				: 'There is no line in the drawing.',
			file.hidden > 0
				? 'Show the outline (its layer or group) in the drawing program and save again.'
				: 'Save the outline as a closed path or polyline and give that file.',
		);
	return open > 0
		? stop(
				`No outline in the drawing is closed; ${open === 1 ? 'one line ends' : `${open} lines end`} loose: ${gaps}.`,
				'Close it in the drawing, or let loose ends be joined that lie that far apart.',
			)
		: stop('No outline in the drawing has an area within reach.', 'Check the unit and the scale.');
}

function leftOut(closed: number, open: number, gaps: string): Complaint[] {
	if (closed + open === 0) return [];
	const parts = [
		...(closed > 0 ? [`${closed} smaller ${closed === 1 ? 'outline' : 'outlines'}`] : []),
		...(open > 0 ? [`${open} open ${open === 1 ? 'line' : 'lines'}`] : []),
	];
	return [
		check(
			`The largest outline of the drawing is taken; ${parts.join(' and ')} beside it left out${open > 0 ? ` (${gaps})` : ''}.`,
			open > 0
				? 'Give openings in the panel as windows of their own; close an open line if it is the outline.'
				: 'Give openings in the panel as windows of their own.',
		),
	];
}

/** Asked where neither the person nor the file says the unit. */
function unitAsked(file: DrawingFile): Complaint {
	const [x, y] = (['x', 'y'] as const).map((axis) => {
		let [low, high] = [Infinity, -Infinity];
		for (const { corners } of file.runs)
			for (const c of corners) [low, high] = [Math.min(low, c[axis]), Math.max(high, c[axis])];
		return high - low;
	});
	return stop(
		`The file does not say how long one of its units is; what is in it measures about ${round(x ?? 0)} by ${round(y ?? 0)} of them.`,
		'Choose the unit the drawing was made in; if it is not known, try one and give a known length to check it against.',
	);
}

function cleaned(t: Tidied, joined: number, ruler: Ruler): Complaint[] {
	const hair = sayHair(ruler);
	const count = (n: number, one: string, many: string): string[] =>
		n === 0 ? [] : [n === 1 ? `one ${one}` : `${n} ${many}`];
	const parts = [
		...count(t.doubled, 'doubled corner taken once', 'doubled corners taken once'),
		...count(
			t.slivers,
			`spike thinner than ${hair} cut off`,
			`spikes thinner than ${hair} cut off`,
		),
		...count(joined, 'gap between loose ends closed', 'gaps between loose ends closed'),
	];
	if (parts.length === 0) return [];
	return [
		check(`The drawing was cleaned: ${parts.join(', ')}.`, 'Look at the outline before cutting.'),
	];
}

function unitSaid(file: DrawingFile, stated: Stated): Complaint[] {
	if (!file.says || !stated.unit) return [];
	const ratio = file.says.mm / (stated.unit.mm * stated.scale);
	if (Math.abs(ratio - 1) < 0.005) return [];
	return [
		check(
			`The file says that one unit is ${unitName(file.says, stated.ruler)}; it was read with ${stated.unit.name}${stated.scale === 1 ? '' : ` times ${stated.scale}`}.`,
			`If the file is right, the outline is ${round(1 / ratio)} times its true size: choose the unit again.`,
		),
	];
}

const IN_MM = { mm: 1, cm: 10, in: 25.4 } as const;

/** As the file calls its unit, else its length: finer than any ruler, for it is multiplied. */
function unitName({ mm, name }: NonNullable<DrawingFile['says']>, { unit }: Ruler): string {
	return name ?? `${Math.round((mm / IN_MM[unit]) * 1e4) / 1e4} ${unit}`;
}

const round = (n: number): number => Number(n.toPrecision(4));
