import { type Designed, type Part, type WorkFace, workOn } from '../../design';
import { mirrored, type Outline, type Point } from '../../geometry';
import { nth, toMm } from '../../measure';
import type { Plan } from '../../plan';
import { circlePath, line, onPaper, outlineSteps, polyline } from '../drawing';
import type { PathMark, View } from '../drawing';
import { struckCircle } from './circle';
import { middles } from './middles';
import type { Template } from './template';

/** A circle is two half turns; a compass sets it out better than a pattern. */
export function isCircle(outline: Outline): boolean {
	return outline.length === 2 && outline.every((c) => Math.abs((c.bulge ?? 0) - 1) < 1e-9);
}

/**
 * A part as a pattern: its outline and holes, a cross in each round hole, and what else is marked
 * on it: pockets, layers and devices set on it, clips, and the knife groove in its back.
 */
export function partTemplate(part: Part, plan?: Designed & Pick<Plan, 'panels'>): Template {
	const width = toMm(part.length);
	const height = toMm(part.width);
	const view: View = { x: 0, y: height, scale: 1 };
	const outline: Outline = part.outline ?? [
		{ x: 0, y: 0 },
		{ x: part.length, y: 0 },
		{ x: part.length, y: part.width },
		{ x: 0, y: part.width },
	];
	const shape = (o: Outline): PathMark => outlineOf(o, view, 'wide');
	const traced = [outline, ...part.holes.filter((h) => !isCircle(h))].map(shape);
	const round = part.holes.filter(isCircle);
	const set = plan === undefined ? [] : setOn(part, plan, view);
	return {
		id: part.id,
		mark: part.label,
		name: `${part.label} ${part.name}`,
		width,
		height,
		seen: `${part.face} face${upText(part)}`,
		marks: [
			...traced,
			...round.map(shape),
			...round.flatMap((h) => crossOf(h, view)),
			...set,
			...middles(width, height),
		],
		traced,
		circles: round.map(shape).flatMap((m) => struckCircle(m) ?? []),
		legend: legendOf(set),
		top: plan?.panels.some((p) => p.id === part.owner) ? UP : null,
	};
}

/** Degrees to the left from the right. */
const UP = 90;

const outlineOf = (o: Outline, view: View, line: PathMark['line'] & string): PathMark => ({
	kind: 'path',
	steps: outlineSteps([o], view),
	line,
});

/** How a bevelled part lies under its pattern: with parallel bevels the pattern is the blank. */
function upText(part: Part): string {
	if (part.bevels.length === 0) return '';
	return part.shift === undefined ? ', LONG face up' : ' up, blank round both faces';
}

/** What each kind of line is, of those there are. */
function legendOf(set: readonly PathMark[]): string {
	const has = (line: PathMark['line']): boolean => set.some((m) => m.line === line);
	return [
		'Thick: cut',
		...(has('narrow') ? ['thin: let in or drilled'] : []),
		...(has('dashed') ? ['dashed: what is set there'] : []),
		...(has('phantom') ? ['two dots: knife groove in the back'] : []),
		'chain: centre lines.',
	].join('; ');
}

/** What is done to a part besides cutting it through; what is done behind lies mirrored. */
function setOn(part: Part, plan: Designed, view: View): PathMark[] {
	const [near, ...behind] = workOn(plan)(part).faces;
	if (near === undefined || near.across !== part.length || near.up !== part.width) return [];
	// The face behind has a corner of its own where a bevel makes it another size.
	const alike = behind.filter((f) => f.across === near.across && f.up === near.up);
	const known = part.holes.filter(isCircle).map(middleOf);
	const isNew = (p: Point): boolean =>
		!known.some((k) => Math.hypot(k.x - p.x, k.y - p.y) < HALF_A_MILLIMETRE);
	return [
		...near.operations.flatMap((op) => lines(op, (o) => o, view, isNew)),
		...alike.flatMap((face) =>
			face.operations.flatMap((op) => lines(op, (o) => mirrored(o, face.across / 2), view, isNew)),
		),
	];
}

/** Ticks: a hole nearer to one of the part's own is that hole. */
const HALF_A_MILLIMETRE = 800;

function lines(
	op: WorkFace['operations'][number],
	home: (o: Outline) => Outline,
	view: View,
	isNew: (p: Point) => boolean,
): PathMark[] {
	switch (op.kind) {
		case 'rabbet':
			return [outlineOf(home(op.outline), view, 'narrow')];
		case 'cut':
			return op.depth === null ? [] : [outlineOf(home(op.outline), view, 'narrow')];
		case 'place':
			return [outlineOf(home(op.outline), view, 'dashed')];
		case 'groove':
			return op.runs.map((run) => {
				const spots = run.map((p) => onPaper(nth(home([p]), 0), view));
				return { kind: 'path', steps: polyline(spots), line: 'phantom' };
			});
		case 'holes':
			return op.at
				.map((p) => nth(home([p]), 0))
				.filter(isNew)
				.flatMap((p) => drilled(p, toMm(op.diameter) / 2, view));
		default:
			return [];
	}
}

function drilled(p: Point, radius: number, view: View): PathMark[] {
	const { x, y } = onPaper(p, view);
	const hole: PathMark = { kind: 'path', steps: circlePath(x, y, radius), line: 'narrow' };
	return [hole, ...crossAt(x, y, radius + 2)];
}

function middleOf(hole: Outline): Point {
	const [a, b] = [nth(hole, 0), nth(hole, 1)];
	return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}

function crossOf(hole: Outline, view: View): PathMark[] {
	const { x, y } = onPaper(middleOf(hole), view);
	const rim = onPaper(nth(hole, 0), view);
	return crossAt(x, y, Math.hypot(rim.x - x, rim.y - y) + 4);
}

function crossAt(x: number, y: number, reach: number): PathMark[] {
	return [line(x - reach, y, x + reach, y), line(x, y - reach, x, y + reach)].map((steps) => ({
		kind: 'path',
		steps,
		line: 'chain',
	}));
}
