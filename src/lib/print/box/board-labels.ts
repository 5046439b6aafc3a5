import { nth, printAngle, type Ruler, around } from '../../measure';
import { sideOf } from '../../design';
import type { Facing, Rabbet } from './facing';
import { type TextMark, onPaper, round, type Spot, textBox } from '../drawing';
import type { Figures } from '../wording';
import { words, type Stage } from '../marks';

/**
 * Words on the drawing of a board: where they may stand, and what is said under the drawing when
 * all those places are taken.
 */
interface BoardLabel {
	readonly places: readonly TextMark[];
	readonly else: string;
}

/** Everything written on a board, what matters most first: it chooses its place first. */
export function boardLabels(f: Facing, stage: Stage, print: Figures, ruler: Ruler): BoardLabel[] {
	const edges = f.near.map((_, k) => edgeAt(f, k, stage));
	return [
		...edges.flatMap((edge) => letterLabel(edge)),
		...f.holes
			.filter((h) => !h.pattern && h.of !== 'device')
			.map((hole) => holeLabel(hole, stage, print)),
		...patternLabels(f, stage, print, ruler),
		...f.devices.map((d) => deviceLabel(d, f, stage, print)),
		...edges.flatMap((edge) => tiltLabel(edge, ruler)),
		...rabbetLabels(f, stage, print),
		...grainLabel(f, stage),
	];
}

/** Where the letter of each edge may stand. */
export function edgeLetters(f: Facing, stage: Stage): (readonly TextMark[])[] {
	return f.near.flatMap((_, k) => letterLabel(edgeAt(f, k, stage)).map((label) => label.places));
}

interface EdgeOnPaper {
	readonly edge: Facing['edges'][number];
	readonly side: string;
	readonly mitre: number;
	/** Does the bevel across from it lean the same way, so that neither face is LONG here? */
	readonly alike: boolean;
	/** From its start to its end, and into the board, on paper. */
	readonly from: Spot;
	readonly to: Spot;
	readonly inward: Spot;
}

function edgeAt(f: Facing, k: number, stage: Stage): EdgeOnPaper {
	const [p, q] = [nth(f.near, k), around(f.near, k + 1)];
	const long = Math.hypot(q.x - p.x, q.y - p.y) || 1;
	const { side, mitre } = sideOf(p, q);
	const level = side === 'left' || side === 'right';
	return {
		edge: nth(f.edges, k),
		side,
		mitre,
		alike: (f.shift?.offset[level ? 'across' : 'up'] ?? 0) > 0,
		from: onPaper(p, stage.view),
		to: onPaper(q, stage.view),
		inward: { x: -(q.y - p.y) / long, y: -(q.x - p.x) / long },
	};
}

const ALONG = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9];

/** Spots beside an edge, `off` paper millimetres into the board. */
function beside({ from, to, inward }: EdgeOnPaper, offs: readonly number[]): Spot[] {
	return offs.flatMap((off) =>
		ALONG.map((t) => ({
			x: from.x + t * (to.x - from.x) + inward.x * off,
			y: from.y + t * (to.y - from.y) + inward.y * off,
		})),
	);
}

function letterLabel(e: EdgeOnPaper): BoardLabel[] {
	const { letter } = e.edge;
	if (letter === '') return [];
	const look = { anchor: 'middle', weight: 'semibold', size: 3.4, halo: true } as const;
	const places = beside(e, [4.2, 2.2, -3]).map((s) => words(s.x, s.y + 1.1, letter, look));
	return [{ places, else: `${letter}: the ${e.side} edge` }];
}

/** How the saw is set at a bevelled edge. */
function tiltLabel(e: EdgeOnPaper, ruler: Ruler): BoardLabel[] {
	const { edge, mitre, side, inward, alike } = e;
	if (edge.tilt === 0) return [];
	const gauge = mitre > 0.02 ? `, gauge turned ${printAngle(mitre, ruler.decimal)}` : '';
	const text = `tilt ${printAngle(edge.tilt, ruler.decimal)}${gauge}, ${alike ? 'sharp edge' : 'LONG FACE'} ${edge.long}`;
	const upright = Math.abs(inward.x) > 0.7;
	const look = { anchor: 'middle', size: 2.5, halo: true } as const;
	const places = beside(e, [9, 12, 6, 15]).map((s) =>
		upright ? words(s.x, s.y, text, { ...look, turn: 90 }) : words(s.x, s.y + 1, text, look),
	);
	const name = edge.letter === '' ? `${side} edge` : `edge ${edge.letter} (${side})`;
	return [{ places, else: `${name}: ${text}` }];
}

function holeLabel(hole: Facing['holes'][number], stage: Stage, print: Figures): BoardLabel {
	const { x, y } = onPaper(hole.centre, stage.view);
	const size =
		hole.size.length === 1
			? `Ø ${print.bench(nth(hole.size, 0))}`
			: hole.size.map((s) => print.bench(s)).join(' × ');
	const from = hole.face ? `, in the ${hole.face} face` : '';
	const deep = hole.recess === null ? '' : `, ${print.bench(hole.recess)} deep${from}`;
	const text = `${hole.name}: ${size}${deep}`;
	const look = { anchor: 'middle', halo: true, size: 2.6 } as const;
	const down = hole.recess === null ? 6.5 : 10.5;
	const level = [down, -4.5, 2 * down, -9, 3 * down, -14].map((dy) => words(x, y + dy, text, look));
	const upright = [-2, 4, -8, 10].map((dx) => words(x + dx, y - 8, text, { ...look, turn: 90 }));
	// Words stand upright in a hole too slim for them.
	const slim = hole.size.length === 2 && (nth(hole.size, 0) / 1600) * stage.scale < 30;
	const beside = ((nth(hole.size, 0) / 1600) * stage.scale) / 2 + 1.5;
	const off = ([beside, -beside] as const).flatMap((dx) =>
		[1, 6, -4].map((dy) =>
			words(x + dx, y + dy, text, { ...look, anchor: dx > 0 ? 'start' : 'end' }),
		),
	);
	const at = `centre ${print.bench(hole.centre.x)} from the left, ${print.bench(hole.centre.y)} up`;
	return {
		places: hole.of === 'halving' ? off : slim ? [...upright, ...level] : [...level, ...upright],
		else: `${text}, ${at}`,
	};
}

/** One label for all bolts or screws of a thing: how many, how large, and how they stand. */
function patternLabels(f: Facing, stage: Stage, print: Figures, ruler: Ruler): BoardLabel[] {
	const drilled = new Map(f.holes.filter((h) => h.pattern).map((h) => [h.name, h]));
	return [...drilled.values()].flatMap((hole): BoardLabel[] => {
		const { pattern } = hole;
		if (!pattern) return [];
		const stands =
			pattern.kind === 'circle'
				? `on Ø ${print.bench(pattern.diameter)}, first ${printAngle(pattern.angle, ruler.decimal)} right of straight up`
				: `${print.bench(pattern.across)} × ${print.bench(pattern.up)} apart`;
		const text = `${pattern.count} ${hole.name}: Ø ${print.bench(nth(hole.size, 0))} ${stands}`;
		const { x, y } = onPaper(pattern.middle, stage.view);
		const high = pattern.kind === 'circle' ? pattern.diameter : pattern.up;
		const half = ((high / 1600) * stage.scale) / 2;
		const look = { anchor: 'middle', halo: true, size: 2.6 } as const;
		const places = [half + 4.5, -half - 2.5, half + 8, -half - 6, 14, -14].map((dy) =>
			words(x, y + dy, text, look),
		);
		return [{ places: withinBoard(places, f, stage), else: text }];
	});
}

/** A device: what it is, on which side, and what its screws are drilled with. */
function deviceLabel(d: Device, f: Facing, stage: Stage, print: Figures): BoardLabel {
	const drilled = f.holes.filter((h) => h.of === 'device' && h.name === d.name);
	const sizes = [...new Set(drilled.map((h) => `Ø ${print.bench(nth(h.size, 0))}`))].join(', ');
	const holes = drilled.length === 0 ? '' : `, ${drilled.length} holes ${sizes}`;
	const text = `${d.name}, ${d.side}, ${print.bench(d.height)} high${holes}`;
	const [low, high] = [nth(d.body, 0), nth(d.body, 2)];
	const { x, y } = onPaper({ x: (low.x + high.x) / 2, y: (low.y + high.y) / 2 }, stage.view);
	const look = { anchor: 'middle', halo: true, size: 2.6 } as const;
	const places = [1, 5, -3, 9, -7, 14, -12].map((dy) => words(x, y + dy, text, look));
	return {
		places: withinBoard(places, f, stage),
		else: d.note === '' ? text : `${text}: ${d.note}`,
	};
}

type Device = Facing['devices'][number];

/** Words moved aside so far that they stand on the board; those too long for it stand nowhere. */
function withinBoard(places: readonly TextMark[], { near }: Facing, { view }: Stage): TextMark[] {
	const box = round(near.map((p) => onPaper(p, view)));
	return places.flatMap((mark) => {
		const at = textBox(mark);
		if (at.width > box.width - 2 * OFF_EDGE) return [];
		const low = box.x + OFF_EDGE - at.x;
		const high = box.x + box.width - OFF_EDGE - (at.x + at.width);
		const inY = at.y >= box.y && at.y + at.height <= box.y + box.height;
		return inY ? [{ ...mark, x: mark.x + Math.max(low, Math.min(0, high)) }] : [];
	});
}

/** Words stand so far within the edge of a board, mm on paper. */
const OFF_EDGE = 0.5;

/** One label for the rabbets of each end: how wide, how deep, and into which face. */
function rabbetLabels(f: Facing, stage: Stage, print: Figures): BoardLabel[] {
	const ends = new Map<string, Rabbet>();
	for (const r of f.rabbets) {
		const key = `${Math.round(r.low.x)} ${Math.round(r.high.x)}`;
		const known = ends.get(key);
		const taller = !known || r.high.y - r.low.y > known.high.y - known.low.y;
		if (taller) ends.set(key, r);
	}
	return [...ends.values()].map((r) => rabbetLabel(r, f, stage, print));
}

function rabbetLabel(r: Rabbet, f: Facing, stage: Stage, print: Figures): BoardLabel {
	const size = `${print.bench(r.high.x - r.low.x)} wide, ${print.bench(r.deep)} deep`;
	const text = `rabbet ${size}, in the inside face`;
	const middle = onPaper({ x: (r.low.x + r.high.x) / 2, y: (r.low.y + r.high.y) / 2 }, stage.view);
	const end = r.low.x + r.high.x < f.long.across ? 'left' : 'right';
	const into = end === 'left' ? 1 : -1;
	const half = (((r.high.x - r.low.x) / 1600) * stage.scale) / 2;
	const places = [0.9, into * (half + 3), into * (half + 6.5), into * (half + 10)].map((dx) =>
		words(middle.x + dx, middle.y, text, { anchor: 'middle', halo: true, size: 2.5, turn: 90 }),
	);
	return { places, else: `${end} end: ${text}` };
}

function grainLabel(f: Facing, { box }: Stage): BoardLabel[] {
	if (f.grain === 'any') return [];
	const up = f.grain === 'up';
	const text = up ? '↑ GRAIN ↓' : '← GRAIN →';
	const look = { anchor: 'middle', ink: 'pencil', size: 2.6, halo: true } as const;
	const spots = [0.15, 0.3, 0.5, 0.7, 0.85].flatMap((x) =>
		[8, 5, 12, box.height / 2].map((y) => ({
			x: box.x + Math.min(box.width * x, x === 0.15 ? 18 : Infinity),
			y: box.y + box.height - y,
		})),
	);
	const places = spots.map((s) => words(s.x, s.y, text, { ...look, ...(up ? { turn: 90 } : {}) }));
	return [{ places, else: `the grain runs ${up ? 'up' : 'across'}` }];
}
