import { clothOf } from '../../job';
import { boundsOfPoints } from '../../geometry';
import { toMm } from '../../measure';
import type { Plan } from '../../plan';
import type { Blank, Girth } from '../../wrap';
import { cornerLetters, cornerSentences, isTraced } from './blank-corners';
import { blankLegend, blankMarks, clearOfMarks } from './blank-marks';
import {
	type Drawing,
	type Mark,
	outlineSteps,
	ringPath,
	type Spot,
	textBox,
	type TextMark,
	type View,
	wrapped,
} from '../drawing';
import { HALF_PAGE } from '../page';
import { figuresOn, type Figures } from '../wording';
import { fitLabel, napArrow, roomOf, runningAxes, type RunningPlaces, words } from '../marks';

/** What a blank is drawn in, mm on paper; `tall` where it would come out too small otherwise. */
export interface BlankRoom {
	readonly width: number;
	readonly height: number;
	readonly tall: number;
}

const WIDE: BlankRoom = { width: 180, height: 84, tall: 125 };
/** Two stand beside each other on a page. */
const HALF: BlankRoom = { width: HALF_PAGE, height: 50, tall: 66 };
const LINE = 3.5;

/**
 * The room a blank is given on a page: half the width of it, unless it is so long, or so much is
 * measured along it, that it would come out too small.
 */
export function roomOnPage(blank: Blank, figures: Figures): BlankRoom {
	const { x, y } = placesOn(blank, figures);
	const long = blank.length > 1.6 * blank.width;
	return long || x.length > 10 || y.length > 10 ? { ...WIDE, height: 50, tall: 66 } : HALF;
}

/**
 * A blank made small, as the BACK of the cloth is seen: running dimensions from its lower left
 * corner, folds, trim lines and relief cuts, the nap, and under it the sums and verdicts in words.
 */
export function blankDrawings(
	blank: Blank,
	plan: Plan,
	figures: Figures = figuresOn(plan.job.shop.ruler),
	room: BlankRoom = WIDE,
): Drawing[] {
	const places = placesOn(blank, figures);
	const { left, below } = roomOf(places);
	const [long, high] = [toMm(blank.length), toMm(blank.width)];
	const scale = Math.min(
		(room.width - left - 2) / long,
		((high > 1.4 * long ? room.tall : room.height) - below) / high,
		1,
	);
	// In the middle of its room, its running figures counted in.
	const view: View = {
		x: left + (room.width - left - 2 - long * scale) / 2,
		y: 2 + high * scale,
		scale,
	};
	const foot = view.y + below + 2;
	const axes = runningAxes(places, view);
	const legend = blankLegend(blank, 0, foot + 4, room.width);
	const text = sentences(blank, figures).flatMap((s) => wrapped(s, room.width, 2.9));
	const start = foot + 4 + legend.height + LINE;
	const cloth = clothOf(plan.job, blank.cloth);
	return [
		{
			width: room.width,
			height: start + text.length * LINE,
			title: titleOf(blank, figures),
			marks: [
				...clothMarks(blank, view, figures, axes, { width: room.width, height: foot - 2 }),
				...axes,
				...napArrow(cloth?.nap ?? 'none', room.width, foot),
				words(0, foot + 1, backText(room), { weight: 'semibold' }),
				...legend.marks,
				...text.map((t, i) => words(0, start + i * LINE, t)),
			],
		},
	];
}

/** Beside the arrow of the nap. */
function backText({ width }: BlankRoom): string {
	return width < WIDE.width ? 'BACK OF CLOTH, a mirror' : 'BACK OF CLOTH, a mirror of what shows';
}

function titleOf(blank: Blank, figures: Figures): string {
	const count = blank.count > 1 ? `, ${blank.count} off` : '';
	return `${blank.label} ${blank.name}: ${figures.size(blank.length, blank.width)}${count}`;
}

function clothMarks(
	blank: Blank,
	view: View,
	figures: Figures,
	axes: readonly Mark[],
	room: { readonly width: number; readonly height: number },
): Mark[] {
	const of = `blank:${blank.id}`;
	const size = figures.size(blank.length, blank.width);
	const outline: Mark = {
		...{ kind: 'path', steps: outlineSteps([blank.outline], view), line: 'wide' },
		...{ fill: 'sheet', of },
	};
	const lines = blankMarks(blank, view);
	const letters = cornerLetters(blank, view, [outline, ...lines, ...axes], room);
	const rings = [
		ringPath(blank.outline, view),
		...clearOfMarks(blank.marks, view),
		...letters.map(ringRound),
	];
	const label = fitLabel(
		[
			{ name: `${blank.label} ${blank.covers}`, lines: [size, 'BACK OF CLOTH'] },
			{ name: blank.label, lines: ['BACK'] },
			{ name: blank.label, lines: [] },
		],
		rings,
	);
	return [outline, ...lines, ...letters, ...label.marks.map((m) => ({ ...m, halo: true, of }))];
}

function ringRound(mark: TextMark): Spot[] {
	const { x, y, width, height } = textBox(mark);
	const [right, below] = [x + width, y + height];
	return [
		{ x, y },
		{ x: right, y },
		{ x: right, y: below },
		{ x, y: below },
	];
}

/** Figures nearer to each other than this (mm on the cloth) are one. */
const SAME = 0.5;

/** Where the folds lie, the layers and windows, and the whole size, from the lower left corner. */
function placesOn(blank: Blank, figures: Figures): RunningPlaces {
	const folds = blank.marks.filter((m) => m.kind === 'fold' && !m.closed).map((m) => m.line);
	const inner = blank.marks.filter((m) => m.closed && ['fold', 'step', 'hole'].includes(m.kind));
	const all = folds.length > 0 ? [boundsOfPoints(folds.flat())] : [];
	const boxes = [...all, ...inner.map((m) => boundsOfPoints(m.line))];
	// Folds between the faces of a band run straight across it.
	const straight = folds.map(boundsOfPoints).filter((b) => b.length < 1 || b.width < 1);
	const across = straight.filter((b) => b.length < 1).map((b) => b.x);
	const along = straight.filter((b) => b.width < 1).map((b) => b.y);
	const list = (ats: readonly number[], whole: number) => {
		const kept: number[] = [];
		for (const at of [whole, ...ats].filter((a) => a > 0 && a <= whole))
			if (!kept.some((k) => Math.abs(toMm(k) - toMm(at)) < SAME)) kept.push(at);
		return kept.slice(0, 12).map((at) => ({ at, text: figures.bench(at) }));
	};
	return {
		x: list([...boxes.flatMap((b) => [b.x, b.x + b.length]), ...across], blank.length),
		y: list([...boxes.flatMap((b) => [b.y, b.y + b.width]), ...along], blank.width),
	};
}

/**
 * The tape as a sum, the reliefs counted, what the cloth takes and what it does not, and the notes.
 */
function sentences(blank: Blank, figures: Figures): string[] {
	const { notches, slits, corners } = blank.reliefs;
	const counted = [
		corners > 0 && `${corners} corner ${plural('notch', corners)}`,
		notches > 0 && `${notches} ${plural('notch', notches)} along curves and edges`,
		slits > 0 && `${slits} ${slits === 1 ? 'slit' : 'slits'}`,
	].filter((t) => t !== false);
	const traced = isTraced(blank) ? 'Traced: see its template.' : '';
	return [
		...(blank.girth
			? [
					`Along the roll: ${sumText(blank.girth.along, figures)}. Across it: ${sumText(blank.girth.across, figures)}.`,
				]
			: []),
		...cornerSentences(blank, figures),
		...(counted.length > 0 || traced !== ''
			? [[reliefText(counted), traced].filter((t) => t !== '').join(' ')]
			: []),
		...(blank.verdicts ?? []).map((v) => `${v.takes ? '' : 'LOOK: '}${v.where}. ${v.text}`),
		...blank.notes,
	];
}

const reliefText = (counted: readonly string[]): string =>
	counted.length === 0 ? '' : `Relief cuts: ${counted.join(', ')}. None may reach the fold.`;

const plural = (word: string, n: number): string => (n === 1 ? word : `${word}es`);

function sumText(g: Girth, figures: Figures): string {
	const terms = [
		`face ${figures.bench(g.face)}`,
		...(g.climbs > 0 ? [`steps ${figures.bench(g.climbs)}`] : []),
		...(g.ends[0] === g.ends[1] && g.ends[0] > 0
			? [`past the edges 2 × ${figures.bench(g.ends[0])}`]
			: g.ends.filter((e) => e !== 0).map((e) => `past the edge ${figures.bench(e)}`)),
	];
	return `${terms.join(' + ')} = ${figures.bench(g.total)}`;
}
