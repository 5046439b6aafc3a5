import { type Rect, rectHolds } from '../../../geometry';
import { nth, toMm, type Ruler } from '../../../measure';
import { type Figures, type SheetAt, rackLabels } from '../../wording';
import { scaleText, standardScale } from '../../marks';
import {
	type Drawing,
	type Mark,
	onPaper,
	overlap,
	textWidth,
	type View,
	round,
	type Bounds,
	textBox,
	type TextMark,
} from '../../drawing';
import { cutsOnSheet, FLAG_BAND } from '../cuts-on-sheet';
import {
	GRAIN_WIDTH,
	grainMark,
	grainUpright,
	hasGrain,
	legendMarks,
	legendWidth,
} from '../legend';
import { corners, laidOut, rectSteps, spoiledOn, wasteRects } from '../laid-out';
import type { CutGroup } from './cut-groups';
import { sizesOfCuts } from './strip-sizes';
import { stripLayout, type StripLayout } from './turned-layout';

/** Names of the edges stand beyond the flags of the cuts. */
const EDGE_NAME = 2.5;
const MARGIN = FLAG_BAND + EDGE_NAME + 1.5;
const DIMENSION = 5;
/** What the hatches mean and the arrow of the grain stand in the line of the upper edge's name. */
const KEY = { line: 3.2, left: 22 };

/** A sheet, or one strip of it, as it lies on the saw: all that does not hang on its scale. */
export interface StripScene {
	readonly at: SheetAt;
	readonly group: CutGroup;
	readonly strip: StripLayout;
	readonly shown: ReturnType<typeof shownIn>;
	readonly offcuts: ReturnType<typeof offcutsIn>;
}

interface Room {
	readonly width: number;
	readonly height: number;
}

export function stripScene(at: SheetAt, group: CutGroup): StripScene {
	const layout = nth(at.boards.answer.layouts, at.index);
	const whole = { x: 0, y: 0, length: layout.length, width: layout.width };
	const lies = group.name === '' ? 'as it lies' : 'along the page';
	const region = group.name === '' ? whole : group.region;
	const strip = stripLayout(layout, region, kerfOf(at), lies);
	const shown = shownIn(strip, group);
	return { at, group, strip, shown, offcuts: offcutsIn(at, strip, shown) };
}

function kerfOf({ boards }: SheetAt): number {
	return boards.problem.method === 'saw' ? boards.problem.kerf : 0;
}

/** How high its drawing will be, mm; nothing is drawn for it. */
export function stripHeight(scene: StripScene, room: Room): number {
	return viewOf(scene.strip, room, scene.at.plan.job.shop.ruler).view.y + DIMENSION + 2;
}

/** A sheet with the cuts that part it into strips, or one strip with its own cuts. */
export function stripDrawing(
	scene: StripScene,
	room: Room,
	figures: Figures,
): Drawing & { readonly scale: string } {
	const { at, group, strip, shown, offcuts } = scene;
	const { view, scale } = viewOf(strip, room, at.plan.job.shop.ruler);
	const things = laidOut(at.plan, { ...shown, offcuts }, view, figures, spoiledOn(at));
	const closed = group.strips.map((s) => closedStrip(strip, s, view, figures));
	const edge = { x: 0, y: 0, length: strip.length, width: strip.width };
	const words = [...things.words, ...closed.flatMap((c) => c.words)];
	const cuts = cutsOnSheet({ ...strip, cuts: shown.cuts }, kerfOf(at), view, words);
	const end = view.x + toMm(strip.length) * view.scale;
	return {
		width: Math.max(end + MARGIN + (strip.turned ? 2.5 : 0), keyEnd(scene, view)),
		height: stripHeight(scene, room),
		title: group.name === '' ? 'The sheet into strips' : `Strip ${group.name}`,
		scale: scaleText({ scale }),
		marks: [
			...clearOf(cuts, [...things.marks, ...closed.flatMap((c) => c.marks)]),
			{ kind: 'path', steps: rectSteps(edge, view), line: 'wide' },
			...cuts,
			...sizesOfCuts(shown.cuts, view, DIMENSION, figures),
			...edgeNames(strip, view),
			...keyOf(scene, view, end),
		],
	};
}

/** What the hatches mean, and which way the grain runs. */
function keyOf(scene: StripScene, view: View, end: number): Mark[] {
	const { at, strip } = scene;
	const grain = strip.turned
		? grainUpright(at, end + MARGIN, view.y - (toMm(strip.width) * view.scale) / 2)
		: grainMark(at, keyEnd(scene, view), KEY.line - 1.3);
	return [...legendMarks(hatchedIn(scene), view.x + KEY.left, KEY.line), ...grain];
}

function hatchedIn({ offcuts, shown }: StripScene) {
	return { offcuts: offcuts.length > 0, waste: shown.waste.length > 0 };
}

/** Where the line of the key ends. */
function keyEnd(scene: StripScene, view: View): number {
	const grain = scene.strip.turned || !hasGrain(scene.at) ? 0 : GRAIN_WIDTH;
	return view.x + KEY.left + legendWidth(hatchedIn(scene)) + grain;
}

/**
 * Without the words that a number of a cut had to be set over where all is crowded: the list names
 * what each cut gives.
 */
function clearOf(cuts: readonly Mark[], marks: readonly Mark[]): Mark[] {
	const numbers = cuts.flatMap((m) => (m.kind === 'text' ? [textBox(m)] : []));
	return marks.filter(
		(m) => m.kind !== 'text' || !numbers.some((box) => overlap(box, textBox(m), 0.2)),
	);
}

/** How large it will be drawn, where 0.1 is 1 : 10. */
export function stripScale({ strip, at }: StripScene, room: Room): number {
	return viewOf(strip, room, at.plan.job.shop.ruler).scale;
}

/** The largest scale that fits. */
function viewOf(strip: StripLayout, room: Room, ruler: Ruler): { view: View; scale: number } {
	const wide = (room.width - 2 * MARGIN) / toMm(strip.length);
	const tall = (room.height - MARGIN - DIMENSION - 2) / toMm(strip.width);
	const scale = standardScale(Math.min(wide, tall), ruler.unit);
	return { view: { x: MARGIN, y: MARGIN + toMm(strip.width) * scale, scale }, scale };
}

/**
 * What these cuts lay bare: nothing of what lies within strips that have a drawing of their own.
 */
function shownIn(strip: StripLayout, group: CutGroup) {
	const closed = group.strips.map((s) => strip.rect(s.region));
	const numbers = new Set(group.cuts.map((c) => c.n));
	const cuts = strip.cuts.filter((c) => numbers.has(c.n));
	return {
		cuts,
		placed: strip.placed.filter((p) => !closed.some((c) => rectHolds(c, p))),
		waste: wasteRects(cuts),
		open: (r: Rect): boolean => !closed.some((c) => rectHolds(c, r)),
	};
}

function offcutsIn(at: SheetAt, strip: StripLayout, shown: { open: (r: Rect) => boolean }) {
	const racks = rackLabels(at);
	return strip.offcuts
		.map((rect, i) => ({ rect, n: nth(strip.offcutNumbers, i) }))
		.filter(({ rect }) => shown.open(rect))
		.map((o) => ({ ...o, rack: racks[o.n] ?? '' }));
}

/** A strip that is drawn by itself: its letter, and in hairlines what will come of it. */
function closedStrip(strip: StripLayout, closed: CutGroup, view: View, figures: Figures) {
	const region = strip.rect(closed.region);
	const ghosts: Mark[] = strip.placed
		.filter((p) => rectHolds(region, p))
		.map((p) => ({ kind: 'path', steps: rectSteps(p, view), line: 'hair', ink: 'rule' }));
	const words = stripWords(
		closed.name,
		figures.size(region.length, region.width),
		round(corners(region, view)),
	);
	return { marks: [...ghosts, ...words], words: words.map(textBox) };
}

const MEASURED = 2.7;

/** The letter of a strip as large as it fits, and its size where there is room under it. */
function stripWords(name: string, measured: string, { x, y, width, height }: Bounds): TextMark[] {
	const size = Math.max(
		1,
		Math.min(8, height * 0.4, (width * 0.8) / textWidth(name, 1, 'semibold')),
	);
	const foot = y + height / 2 + size * 0.35;
	const set = { kind: 'text', x: x + width / 2, anchor: 'middle', halo: true } as const;
	const letter: TextMark = { ...set, y: foot, text: name, size, weight: 'semibold' };
	if (height < size + 6 || textWidth(measured, MEASURED) + 1 > width) return [letter];
	return [letter, { ...set, y: foot + 4, text: measured, size: MEASURED }];
}

/** Which edges of the sheet lie at the left and at the top of the picture. */
function edgeNames({ sides, width }: StripLayout, view: View): Mark[] {
	const corner = onPaper({ x: 0, y: width }, view);
	const name = (text: string, more: Partial<TextMark>): Mark => ({
		kind: 'text',
		x: 0,
		y: 0,
		text,
		size: EDGE_NAME,
		ink: 'pencil',
		...more,
	});
	return [
		name(`${sides.top} edge`, { x: corner.x, y: corner.y - FLAG_BAND - 0.6 }),
		name(`${sides.left} edge`, { x: corner.x - FLAG_BAND - 0.6, y: view.y, turn: 90 }),
	];
}
