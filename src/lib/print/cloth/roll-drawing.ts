import { clothOf, rollOf } from '../../job';
import type { RollLayout } from '../../layout';
import { toMm } from '../../measure';
import type { Placed } from '../../nest';
import type { Plan } from '../../plan';
import type { Blank } from '../../wrap';
import { clearOfMarks } from './blank-marks';
import {
	type Drawing,
	type Mark,
	hatch,
	type Hatch,
	line,
	onPaper,
	outlineSteps,
	ringPath,
	textWidth,
	type View,
} from '../drawing';
import { figuresOn, type Figures } from '../wording';
import {
	fitLabel,
	lain,
	NAP_LENGTH,
	napArrow,
	roomOf,
	runningAxes,
	TEXT,
	type RunningPlaces,
	words,
} from '../marks';

/**
 * The cloth as it is pulled off the roll and cut, BACK up, its length to the right: blanks with
 * their marks, running dimensions from the lower left corner, the nap, and the line at which the
 * roll is cut off.
 */
export function rollDrawing(
	layout: RollLayout,
	plan: Plan,
	room: { readonly width: number; readonly height: number } = { width: 180, height: 130 },
	figures: Figures = figuresOn(plan.job.shop.ruler),
): Drawing {
	const roll = rollOf(plan.job, layout.roll);
	const cloth = clothOf(plan.job, roll?.cloth);
	const pull = Math.max(layout.pull, layout.answer.length, 1);
	const selvedge = selvedgeOf(layout, plan);
	const usable = layout.problem.width;
	const width = usable + 2 * selvedge;
	const placed = layout.answer.placed.map((p) => ({ ...p, y: p.y + selvedge }));
	const places = placesOn(placed, pull, width, figures);
	const { left, below } = roomOf(places);
	const right = 6;
	const scale = Math.min(
		(room.width - left - right) / toMm(pull),
		(room.height - below - 8) / toMm(width),
	);
	const view: View = { x: left, y: 3 + toMm(width) * scale, scale };
	const foot = view.y + below + 3;
	const narrow = toMm(pull) * scale < NAP_LENGTH + 26;
	const kind: Hatch = cloth?.kind === 'vinyl' ? 'vinyl' : 'pile';
	return {
		width: left + toMm(pull) * scale + right,
		height: narrow ? foot + 7 : foot + 3,
		title: `${cloth?.name ?? 'Cloth'}: pull ${figures.bench(pull)} off the roll, ${widthText(layout, plan, figures)}`,
		marks: [
			...clothOnRoll(pull, width, view, kind),
			...selvedges(pull, width, selvedge, view),
			...placed.flatMap((p) => blankOnRoll(p, plan.blanks, view, figures)),
			...cutOff(pull, width, view),
			...runningAxes(places, view),
			words(
				left,
				narrow ? foot + 5 : foot + 1,
				backText(selvedge, toMm(pull) * scale - (narrow ? 0 : NAP_LENGTH + 8)),
				{ weight: 'semibold' },
			),
			...napArrow(cloth?.nap ?? 'none', left + toMm(pull) * scale, foot),
		],
	};
}

/**
 * From the edge of the roll to what of it may be used, as much on either side: the rack knows the
 * two widths, not how they lie. Common practice, no source.
 */
export function selvedgeOf({ roll, problem }: RollLayout, plan: Plan): number {
	const full = rollOf(plan.job, roll)?.width ?? problem.width;
	return Math.max(0, Math.floor((full - problem.width) / 2));
}

/** `1370 wide`, `1370 wide, 1340 of it usable`. */
export function widthText(layout: RollLayout, plan: Plan, figures: Figures): string {
	const selvedge = selvedgeOf(layout, plan);
	const usable = layout.problem.width;
	if (selvedge === 0) return `${figures.bench(usable)} wide`;
	return `${figures.bench(usable + 2 * selvedge)} wide, ${figures.bench(usable)} of it usable`;
}

/** What is looked at, and what the hatching says where there is room for it. */
function backText(selvedge: number, room: number): string {
	const all = 'BACK OF CLOTH  ·  hatched along both edges: selvedge, not used';
	return selvedge > 0 && textWidth(all, TEXT, 'semibold') < room ? all : 'BACK OF CLOTH';
}

/** The strips along both edges that are not used, and where they end. */
function selvedges(pull: number, width: number, selvedge: number, view: View): Mark[] {
	if (selvedge === 0) return [];
	return [0, width - selvedge].flatMap((y): Mark[] => {
		const ring = [
			onPaper({ x: 0, y }, view),
			onPaper({ x: pull, y }, view),
			onPaper({ x: pull, y: y + selvedge }, view),
			onPaper({ x: 0, y: y + selvedge }, view),
		];
		const ends = y === 0 ? selvedge : y;
		const a = onPaper({ x: 0, y: ends }, view);
		const b = onPaper({ x: pull, y: ends }, view);
		return [
			hatch('waste', [ring], 0.7),
			{ kind: 'path', steps: line(a.x, a.y, b.x, b.y), line: 'dashed' },
		];
	});
}

/** The cloth itself with its pile, and broken lines where it runs on to the roll. */
function clothOnRoll(pull: number, width: number, view: View, kind: Hatch): Mark[] {
	const corners = [
		onPaper({ x: 0, y: 0 }, view),
		onPaper({ x: pull, y: 0 }, view),
		onPaper({ x: pull, y: width }, view),
		onPaper({ x: 0, y: width }, view),
	] as const;
	const [a, b, c, d] = corners;
	const edge = (steps: ReturnType<typeof line>): Mark => ({ kind: 'path', steps, line: 'wide' });
	return [
		hatch(kind, [corners], 1.6),
		edge(line(a.x, a.y, b.x + 5, b.y)),
		edge(line(d.x, d.y, c.x + 5, c.y)),
		edge(line(a.x, a.y, d.x, d.y)),
	];
}

function cutOff(pull: number, width: number, view: View): Mark[] {
	const a = onPaper({ x: pull, y: 0 }, view);
	const b = onPaper({ x: pull, y: width }, view);
	return [{ kind: 'path', steps: line(a.x, a.y + 1.5, b.x, b.y - 1.5), line: 'cut', ink: 'chalk' }];
}

function blankOnRoll(at: Placed, blanks: readonly Blank[], view: View, figures: Figures): Mark[] {
	const blank = blanks.find((b) => b.id === at.id);
	if (!blank) throw new Error(`bug: ${at.id} is on a roll but is no blank`);
	const of = `blank:${blank.id}`;
	const shape = lain(blank.outline, blank, at);
	const folds = blank.marks.filter((m) => m.kind === 'fold');
	const laidFolds = folds.map((m) => ({ ...m, line: lain(m.line, blank, at) }));
	const label = fitLabel(
		[
			{ name: `${blank.label} ${blank.covers}`, lines: [figures.size(at.length, at.width)] },
			{ name: blank.label, lines: [figures.size(at.length, at.width)] },
			{ name: blank.label, lines: [] },
		],
		[ringPath(shape, view), ...clearOfMarks(laidFolds, view)],
	);
	return [
		{ kind: 'path', steps: outlineSteps([shape], view), line: 'wide', fill: 'sheet', of },
		...laidFolds.map((m): Mark => {
			const steps = outlineSteps([m.line], view);
			return {
				kind: 'path',
				steps: m.closed ? steps : steps.slice(0, -1),
				line: 'dashed',
				ink: 'pencil',
			};
		}),
		...label.marks.map((m) => ({ ...m, halo: true, of })),
	];
}

/** Every edge of a blank from the roll's own edge and from its beginning, and the whole. */
function placesOn(
	placed: readonly Placed[],
	pull: number,
	width: number,
	figures: Figures,
): RunningPlaces {
	const list = (ats: readonly number[], whole: number) =>
		[...new Set([whole, ...ats.filter((a) => a > 0)])]
			.slice(0, 24)
			.map((at) => ({ at, text: figures.bench(at) }));
	return {
		x: list(
			placed.flatMap((p) => [p.x, p.x + p.length]),
			pull,
		),
		y: list(
			placed.flatMap((p) => [p.y, p.y + p.width]),
			width,
		),
	};
}
