import { nth, around } from '../../measure';
import type { Ink, PathMark, PathStep } from './drawing';
import type { Spot } from './path';

/**
 * Line hatches that tell materials apart without colour: boards by their make, cloth by its pile,
 * offcuts at 45 degrees (ISO 128-3), waste crossed. Each is always accompanied by a word.
 */
export type Hatch =
	| 'plywood'
	| 'mdf'
	| 'particleboard'
	| 'hardboard'
	| 'solid'
	| 'plastic'
	| 'other'
	| 'pile'
	| 'vinyl'
	| 'offcut'
	| 'waste';

/**
 * One family of parallel strokes: `dash` and `gap` along it, each row shifted by `shift` from the
 * one before.
 */
interface Family {
	readonly angle: number; // degrees, counter-clockwise as seen
	readonly pitch: number; // mm between rows
	readonly from?: number; // where the first row lies
	readonly dash?: number;
	readonly gap?: number;
	readonly shift?: number;
}

const FAMILIES: Readonly<Record<Hatch, readonly Family[]>> = {
	plywood: [
		{ angle: 0, pitch: 3 },
		{ angle: 0, pitch: 3, from: 1.2, dash: 1.6, gap: 1.4 },
	],
	mdf: [{ angle: 0, pitch: 1.4, dash: 0.35, gap: 2.45, shift: 1.4 }],
	particleboard: [
		{ angle: 30, pitch: 2.1, dash: 0.9, gap: 2.6, shift: 1.3 },
		{ angle: -40, pitch: 2.7, dash: 0.7, gap: 3.1, shift: 1.9 },
	],
	hardboard: [{ angle: 0, pitch: 1.1, dash: 0.35, gap: 1.05, shift: 0.7 }],
	solid: [{ angle: 0, pitch: 1.6, dash: 9, gap: 1.2, shift: 4.1 }],
	plastic: [
		{ angle: 60, pitch: 3 },
		{ angle: 60, pitch: 3, from: 0.7 },
	],
	other: [{ angle: 90, pitch: 2.5 }],
	pile: [{ angle: 90, pitch: 1.2, dash: 1.8, gap: 1.8, shift: 1.8 }],
	vinyl: [{ angle: 20, pitch: 1.8, dash: 1, gap: 1.6, shift: 1.3 }],
	offcut: [{ angle: 45, pitch: 3 }],
	waste: [
		{ angle: 45, pitch: 2.2 },
		{ angle: -45, pitch: 2.2 },
	],
};

const INKS: Partial<Record<Hatch, Ink>> = { pile: 'cloth', vinyl: 'cloth', waste: 'pencil' };

/**
 * The hatch clipped to rings on paper (even-odd: the first is the outline, the rest its holes).
 * `coarse` widens the pitch for large faces, so that a sheet of labels stays light.
 */
export function hatch(kind: Hatch, rings: readonly (readonly Spot[])[], coarse = 1): PathMark {
	return {
		kind: 'path',
		steps: FAMILIES[kind].flatMap((family) => strokes(family, rings, coarse)),
		line: 'hair',
		ink: INKS[kind] ?? 'wood',
	};
}

/** More strokes than these of one family are a grey face, and take seconds to make. */
export const MOST_STROKES = 8000;

/** Made as much wider, by doubling, as keeps the strokes on a face of such a size under them. */
function widened(family: Family, along: number, across: number): Family | null {
	const { pitch, from = 0, dash, gap = 0, shift = 0 } = family;
	const rows = across / pitch;
	const each = dash === undefined ? 0 : along / (dash + gap);
	if (!Number.isFinite(rows) || !Number.isFinite(each)) return null;
	let times = 1;
	while ((rows / times + 1) * (each / times + 1) > MOST_STROKES) times *= 2;
	if (times === 1) return family;
	const wide = { angle: family.angle, pitch: pitch * times, from: from * times };
	if (dash === undefined) return wide;
	return { ...wide, dash: dash * times, gap: gap * times, shift: shift * times };
}

function strokes(asked: Family, rings: readonly (readonly Spot[])[], coarse: number): PathStep[] {
	const a = (asked.angle * Math.PI) / 180;
	// Along the strokes u, across them v; paper's y points down.
	const turned = rings.map((ring) =>
		ring.map(({ x, y }) => ({
			u: x * Math.cos(a) - y * Math.sin(a),
			v: x * Math.sin(a) + y * Math.cos(a),
		})),
	);
	const back = (u: number, v: number): readonly [number, number] => [
		u * Math.cos(a) + v * Math.sin(a),
		-u * Math.sin(a) + v * Math.cos(a),
	];
	const spots = turned.flat();
	const [u, v] = [spanOf(spots.map((p) => p.u)), spanOf(spots.map((p) => p.v))];
	const spaced = { ...asked, pitch: asked.pitch * coarse, from: (asked.from ?? 0) * coarse };
	const family = widened(spaced, u.high - u.low, v.high - v.low);
	if (family === null) return [];
	const { pitch, from = 0 } = family;
	const steps: PathStep[] = [];
	const last = Math.floor((v.high - from) / pitch);
	for (let row = Math.ceil((v.low - from) / pitch); row <= last; row++) {
		const v = from + row * pitch;
		for (const [start, end] of inside(turned, v))
			for (const [u1, u2] of dashes(family, row, start, end))
				steps.push(['M', ...back(u1, v)], ['L', ...back(u2, v)]);
	}
	return steps;
}

const spanOf = (list: readonly number[]) => ({ low: Math.min(...list), high: Math.max(...list) });

/** Stretches of the row v that lie inside the rings, by even-odd crossing. */
function inside(
	rings: readonly (readonly { u: number; v: number }[])[],
	v: number,
): (readonly [number, number])[] {
	const crossings: number[] = [];
	for (const ring of rings)
		ring.forEach((p, i) => {
			const q = around(ring, i + 1);
			if (p.v <= v !== q.v <= v) crossings.push(p.u + ((v - p.v) / (q.v - p.v)) * (q.u - p.u));
		});
	crossings.sort((a, b) => a - b);
	const pairs: (readonly [number, number])[] = [];
	for (let i = 0; i + 1 < crossings.length; i += 2)
		pairs.push([nth(crossings, i), nth(crossings, i + 1)]);
	return pairs;
}

function dashes(
	family: Family,
	row: number,
	start: number,
	end: number,
): (readonly [number, number])[] {
	if (family.dash === undefined) return [[start, end]];
	const period = family.dash + (family.gap ?? 0);
	const offset = (row * (family.shift ?? 0)) % period;
	const found: (readonly [number, number])[] = [];
	for (let n = Math.floor((start - offset) / period); n * period + offset < end; n++) {
		const u1 = Math.max(start, n * period + offset);
		const u2 = Math.min(end, n * period + offset + family.dash);
		if (u2 - u1 > 0.05) found.push([u1, u2]);
	}
	return found;
}
