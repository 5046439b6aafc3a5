import {
	chain,
	area,
	bounds,
	edgeLength,
	edgesOf,
	type Corner,
	type Outline,
	tidy,
	type Tidied,
	corner,
	moved,
	scaled,
} from '../../geometry';
import type { OutlineShape } from '../../job';
import { TICKS_PER_MM } from '../../measure';
import { drawn, type Complaint, type Drawn, type Undrawn, inMm } from '../shape';
import { check, stop, type DrawingFile } from './drawing-file';

/** What a person states of a drawing. */
export interface Stated {
	readonly unitMm: number;
	readonly unitName: string;
	readonly scale: number;
	readonly known: Extract<OutlineShape, { kind: 'svg' }>['known'];
	readonly join: number; // ticks
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
	const ticks = stated.unitMm * stated.scale * TICKS_PER_MM;
	const chained = chain(file.runs, stated.join / ticks);
	const sized = chained.closed.map((c) => sizedUp(c, ticks)).filter((o) => o !== null);
	const ranked = sized.map((o) => ({ o, size: Math.abs(area(o)) })).sort((a, b) => b.size - a.size);
	const [best] = ranked;
	const said = [...file.complaints, ...unitSaid(file, stated)];
	if (!best || best.size === 0)
		return { outline: null, complaints: [...said, nothingClosed(file, chained.open.length)] };
	const clean = tidy(best.o);
	const box = bounds(clean.outline);
	const outline = moved(clean.outline, -box.x, -box.y);
	const rest = ranked.length - 1;
	return drawn(outline, [
		...said,
		...leftOut(rest, chained.open.length),
		...cleaned(clean, chained.joined),
		...knownFault(outline, stated.known),
	]);
}

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

function nothingClosed(file: DrawingFile, open: number): Complaint {
	if (file.runs.length === 0)
		return stop(
			'There is no line in the drawing.',
			'Save the outline as a closed path or polyline and give that file.',
		);
	return open > 0
		? stop(
				`No outline in the drawing is closed; ${open === 1 ? 'one line ends' : `${open} lines end`} loose.`,
				'Close it in the drawing, or allow a larger gap for joining loose ends.',
			)
		: stop('No outline in the drawing has an area within reach.', 'Check the unit and the scale.');
}

function leftOut(closed: number, open: number): Complaint[] {
	if (closed + open === 0) return [];
	const parts = [
		...(closed > 0 ? [`${closed} smaller ${closed === 1 ? 'outline' : 'outlines'}`] : []),
		...(open > 0 ? [`${open} open ${open === 1 ? 'line' : 'lines'}`] : []),
	];
	return [
		check(
			`The largest outline of the drawing is taken; ${parts.join(' and ')} beside it left out.`,
			'Give openings in the panel as windows of their own.',
		),
	];
}

function cleaned(t: Tidied, joined: number): Complaint[] {
	const count = (n: number, one: string, many: string): string[] =>
		n === 0 ? [] : [n === 1 ? `one ${one}` : `${n} ${many}`];
	const parts = [
		...count(t.doubled, 'doubled corner taken once', 'doubled corners taken once'),
		...count(
			t.slivers,
			'spike thinner than 0.01 mm cut off',
			'spikes thinner than 0.01 mm cut off',
		),
		...count(joined, 'gap between loose ends closed', 'gaps between loose ends closed'),
	];
	if (parts.length === 0) return [];
	return [
		check(`The drawing was cleaned: ${parts.join(', ')}.`, 'Look at the outline before cutting.'),
	];
}

function unitSaid(file: DrawingFile, stated: Stated): Complaint[] {
	if (!file.says) return [];
	const ratio = file.says.mm / (stated.unitMm * stated.scale);
	if (Math.abs(ratio - 1) < 0.005) return [];
	return [
		check(
			`The file says that one unit is ${file.says.name}; it was read with ${stated.unitName}${stated.scale === 1 ? '' : ` times ${stated.scale}`}.`,
			`If the file is right, the outline is ${round(1 / ratio)} times its true size: choose the unit again.`,
		),
	];
}

const round = (n: number): number => Number(n.toPrecision(4));

/** A drawing off by this much against the tape is not the thing measured: 0.5 %. */
const OFF = 0.005;
/** Or by what a tape shows at all. */
const TAPE = 0.5 * TICKS_PER_MM;

export function knownFault(outline: Outline, known: Stated['known']): Complaint[] {
	if (!known) return [];
	const box = bounds(outline);
	const edge = edgesOf(outline)[known.edge - 1];
	const seen =
		known.of === 'length'
			? box.length
			: known.of === 'width'
				? box.width
				: edge && edgeLength(edge);
	if (seen === undefined)
		return [
			check(
				`There is no edge ${known.edge} to check against.`,
				`The outline has ${outline.length} edges.`,
			),
		];
	if (Math.abs(seen - known.is) <= Math.max(OFF * known.is, TAPE)) return [];
	const factor = known.is / seen;
	return [
		check(
			`The known length is ${inMm(known.is)}, and in the drawing it is ${inMm(seen)}.`,
			`${hint(factor)} Then check again before cutting.`,
		),
	];
}

const SLIPS: readonly (readonly [number, string])[] = [
	[25.4, 'The drawing seems to be in inches.'],
	[10, 'The drawing seems to be in centimetres.'],
	[1000, 'The drawing seems to be in metres.'],
	[1 / 25.4, 'The drawing seems to be in millimetres, not inches.'],
	[0.1, 'The drawing seems to be in millimetres, not centimetres.'],
	[0.001, 'The drawing seems to be in millimetres, not metres.'],
	[25.4 / 96, 'The drawing seems to be in pixels of 1/96 in.'],
	[25.4 / 72, 'The drawing seems to be in points of 1/72 in.'],
];

function hint(factor: number): string {
	const slip = SLIPS.find(([f]) => Math.abs(factor / f - 1) < 0.01);
	return slip ? slip[1] : `A scale of ${round(factor)} would make them equal.`;
}
