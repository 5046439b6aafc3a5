import { clothOf, materialOf, type Job } from '../../job';
import { lastOf, nth } from '../../measure';
import type { PanelSection, PanelDetail } from '../../design';
import type { Region, Point, Rect } from '../../geometry';
import {
	type Drawing,
	type Mark,
	hatch,
	type Hatch,
	polygon,
	polyline,
	rect,
	type Spot,
	textWidth,
} from '../drawing';
import { dimension, words } from '../marks';
import type { Figures } from '../wording';

const WIDTH = 180;
const LEFT = 10;
const RIGHT = 22;
const TOP = 16;
/** Letters of a height's figure. */
const HEIGHT = 2.6;

/**
 * The work's x and height on paper; heights are drawn larger than widths, or steps and cloth could
 * not be seen.
 */
interface Scales {
	readonly x0: number;
	readonly z0: number;
	readonly across: number;
	readonly up: number;
	readonly mirror: number | null;
}

/** Section A-A through the steps: boards hatched one way and the other, the cloth over them. */
export function sectionView(
	d: PanelDetail,
	section: PanelSection,
	{ title, job }: { readonly title: string; readonly job: Job },
	figures: Figures,
	mirror: boolean,
): Drawing {
	const box = boxOf(section);
	const across = (WIDTH - LEFT - RIGHT) / box.length;
	const up = Math.min(26 / box.width, 1.2 / 1600);
	const times = Math.max(1, Math.round((up / across) * 2) / 2);
	const s: Scales = {
		x0: box.x,
		z0: box.y + box.width,
		across,
		up: across * times,
		mirror: mirror ? box.x * 2 + box.length : null,
	};
	const bottom = TOP + box.width * s.up;
	const names = nameLines(section, s, bottom);
	const height = bottom + names.height + 6;
	const marks: Mark[] = [
		...section.boards.map((b, i) => board(b, kindOf(job, b.material), i, s)).flat(),
		...section.cloths.flatMap((c) =>
			c.regions.flatMap((r) => cloth(r, clothHatch(job, c.cloth), s)),
		),
		...thickness(d, section, s, figures),
		...names.marks,
		words(2, 4, 'A–A', { size: 4, weight: 'semibold' }),
		words(14, 4, times === 1 ? 'to one scale' : `heights drawn ${times} times as large as widths`, {
			ink: 'pencil',
		}),
	];
	return { width: WIDTH, height, title, marks };
}

function boxOf(section: PanelSection): Rect {
	const corners = section.cloths.flatMap((c) => c.regions.flatMap((r) => r.outline));
	const xs = [...section.boards.flatMap((b) => [b.from, b.to]), ...corners.map((p) => p.x)];
	const zs = [...section.boards.flatMap((b) => [b.low, b.high]), ...corners.map((p) => p.y)];
	const [x, y] = [Math.min(...xs), Math.min(...zs)];
	return { x, y, length: Math.max(...xs) - x, width: Math.max(...zs) - y };
}

function spot(p: Point, s: Scales): Spot {
	const x = s.mirror === null ? p.x : s.mirror - p.x;
	return { x: LEFT + (x - s.x0) * s.across, y: TOP + (s.z0 - p.y) * s.up };
}

function kindOf(job: Job, material: string): Hatch {
	return materialOf(job, material)?.kind ?? 'other';
}

function clothHatch(job: Job, cloth: string): Hatch {
	return clothOf(job, cloth)?.kind === 'vinyl' ? 'vinyl' : 'pile';
}

function board(b: PanelSection['boards'][number], kind: Hatch, i: number, s: Scales): Mark[] {
	const ring = [
		spot({ x: b.from, y: b.low }, s),
		spot({ x: b.to, y: b.low }, s),
		spot({ x: b.to, y: b.high }, s),
		spot({ x: b.from, y: b.high }, s),
	];
	return [
		// Neighbours differ in pitch (ISO 128-3): boards of one make glued on each other must not
		// run into one.
		hatch(kind, [ring], i % 2 === 0 ? 0.6 : 0.9),
		{ kind: 'path', steps: polygon(ring), line: 'wide' },
	];
}

function cloth(r: Region, kind: Hatch, s: Scales): Mark[] {
	const rings = [r.outline, ...r.holes].map((o) => o.map((p) => spot(p, s)));
	const steps = rings.flatMap((ring) => polygon(ring));
	return [
		{ kind: 'path', steps, line: 'narrow', ink: 'cloth', fill: 'chalk-wash', evenOdd: true },
		hatch(kind, rings, 0.5),
	];
}

/** Thicknesses of what is stacked at the thickest place, at the right. */
function thickness(d: PanelDetail, section: PanelSection, s: Scales, figures: Figures): Mark[] {
	const levels = [...new Set(section.boards.flatMap((b) => [b.low, b.high]))].sort((a, b) => a - b);
	const cloth = d.cloth ? [lastOf(levels) + d.cloth.pressed] : [];
	const all = [...levels, ...cloth];
	const x = WIDTH - RIGHT + 4;
	const gaps = all.slice(1).map((z, i) => ({ low: nth(all, i), high: z }));
	let column = 0;
	return gaps.flatMap(({ low, high }) => {
		const [a, b] = [spot({ x: 0, y: low }, s).y, spot({ x: 0, y: high }, s).y];
		const text = figures.length(high - low);
		const tight = a - b < textWidth(text, HEIGHT) + 2;
		if (tight) column = (column + 1) % 3;
		const at = x + (tight ? column * 4.5 : 0);
		return dimension({ x: at, y: a }, { x: at, y: b }, 0, text, HEIGHT);
	});
}

interface Names {
	readonly marks: Mark[];
	readonly height: number;
}

/** Letters of a name, and room for one row of names, mm. */
const NAME = 2.9;
const ROW = 4.2;
/** Where along its stretch of board a leader may start. */
const STARTS = [0.5, 0.35, 0.65, 0.2, 0.8, 0.08, 0.92, 0.04, 0.96];

/**
 * The name of each stretch of board under the section, led to it from straight below: no name
 * touches another, and no leader strikes one.
 */
function nameLines(section: PanelSection, s: Scales, bottom: number): Names {
	const named = new Map<string, PanelSection['boards'][number]>();
	for (const b of section.boards) {
		const known = named.get(b.name);
		if (!known || b.to - b.from > known.to - known.from) named.set(b.name, b);
	}
	const middle = (b: PanelSection['boards'][number]): number => (b.from + b.to) / 2;
	const slots: NameSlot[] = [];
	for (const b of [...named.values()].sort((p, q) => middle(p) - middle(q)))
		slots.push(slotOf(b, slots, s));
	const marks = slots.flatMap(({ text, at, row }): Mark[] => {
		const y = bottom + 5 + row * ROW;
		return [
			{
				kind: 'path',
				steps: polyline([at, { x: at.x, y: y - 2.6 }]),
				line: 'hair',
				ink: 'pencil',
			},
			{ kind: 'path', steps: rect(at.x - 0.4, at.y - 0.4, 0.8, 0.8), fill: 'ink' },
			words(at.x, y, text, { anchor: 'middle', halo: true }),
		];
	});
	return { marks, height: 4 + (1 + Math.max(-1, ...slots.map(({ row }) => row))) * ROW };
}

interface NameSlot {
	readonly text: string;
	readonly at: Spot;
	readonly row: number;
	/** Half of the room its name takes, mm. */
	readonly half: number;
}

/** The highest row, and there the start nearest to the middle, where nothing is struck. */
function slotOf(
	b: PanelSection['boards'][number],
	standing: readonly NameSlot[],
	s: Scales,
): NameSlot {
	const half = textWidth(b.name, NAME) / 2 + 1;
	const z = (b.low + b.high) / 2;
	for (let row = 0; row <= standing.length; row++)
		for (const u of STARTS) {
			const at = spot({ x: b.from + (b.to - b.from) * u, y: z }, s);
			const apart = (o: NameSlot): number => Math.abs(o.at.x - at.x);
			const within = at.x - half > 0 && at.x + half < WIDTH;
			const free = standing.every((o) => {
				if (apart(o) < 1) return false;
				if (o.row === row) return apart(o) > half + o.half;
				return apart(o) > (o.row < row ? o.half : half);
			});
			if (within && free) return { text: b.name, at, row, half };
		}
	// So many names on so narrow a board: a row of its own.
	const at = spot({ x: (b.from + b.to) / 2, y: z }, s);
	return { text: b.name, at, row: standing.length, half };
}
