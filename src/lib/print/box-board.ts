import type { BoxBoard } from '../design/box/box-plan';
import { sideOf } from '../design/box/part-of';
import { ticks } from '../measure/length';
import { printAngle } from '../measure/angle';
import type { Ruler } from '../measure/ruler';
import type { Drawing, Mark } from './drawing';
import { running } from './dimension';
import type { Figures } from './figures';
import { onPaper, type Spot } from './path';
import { outlineMark, scaleText, stageFor, words, type Stage } from './panel-stage';

const MARGINS = { left: 30, right: 22, top: 16, bottom: 30 };

/**
 * One board seen from outside: the outside face in wide lines, the inside one dashed where a bevel parts them, the letter and
 * tilt at each edge, holes measured from the lower left corner of what is cut from the sheet.
 */
export function boardDrawing(b: BoxBoard, print: Figures, ruler: Ruler): Drawing {
	const rect = { x: 0, y: 0, length: b.long.across, width: b.long.up };
	const stage = stageFor(rect, MARGINS);
	const { view } = stage;
	const bevelled = b.edges.some((e) => e.tilt > 0);
	const marks: Mark[] = [
		outlineMark([b.outside], view, 'wide', { of: `part:${b.label}` }),
		...(bevelled ? [outlineMark([b.inside], view, 'dashed')] : []),
		...b.holes.flatMap((h) => holeMarks(h, stage, print)),
		...b.edges.flatMap((_, k) => edgeMarks(b, k, stage, ruler)),
		...sizes(b, stage, print),
		...grain(b, stage),
		...notes(b, stage, print),
	];
	return {
		width: stage.width,
		height: stage.height,
		title: `${b.label} ${b.name}, seen from outside`,
		marks,
	};
}

function holeMarks(hole: BoxBoard['holes'][number], stage: Stage, print: Figures): Mark[] {
	const spot = onPaper(hole.centre, stage.view);
	const size =
		hole.size.length === 1
			? `Ø ${print.bench(hole.size[0]!)}`
			: hole.size.map((s) => print.bench(s)).join(' × ');
	const deep = hole.recess === null ? '' : `, ${print.bench(hole.recess)} deep`;
	const down = hole.recess === null ? 0 : 4;
	// Words stand upright in a hole too slim for them.
	const across = (hole.size[0]! / 1600) * stage.scale;
	const slim = hole.size.length === 2 && across < 30;
	const seat: [number, number] = slim ? [spot.x - 2, spot.y - 8] : [spot.x, spot.y + 6.5 + down];
	const cross = (dx: number, dy: number): Mark => ({
		kind: 'path',
		steps: [
			['M', spot.x - dx, spot.y - dy],
			['L', spot.x + dx, spot.y + dy],
		],
		line: 'chain',
		ink: 'pencil',
	});
	return [
		outlineMark([hole.outline], stage.view, hole.recess === null ? 'wide' : 'narrow'),
		cross(4, 0),
		cross(0, 4),
		words(...seat, `${hole.name}: ${size}${deep}`, {
			anchor: 'middle',
			halo: true,
			size: 2.6,
			...(slim ? { turn: 90 } : {}),
		}),
	];
}

/** The letter in a circle at the middle of the edge, and under it how the saw is set. */
function edgeMarks(b: BoxBoard, k: number, stage: Stage, ruler: Ruler): Mark[] {
	const edge = b.edges[k]!;
	const [p, q] = [b.outside[k]!, b.outside[(k + 1) % b.outside.length]!];
	const middle = onPaper({ x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 }, stage.view);
	const long = Math.hypot(q.x - p.x, q.y - p.y) || 1;
	// Into the board from the edge, on paper.
	const inward = { x: -(q.y - p.y) / long, y: -(q.x - p.x) / long };
	const seat: Spot = { x: middle.x + inward.x * 4.2, y: middle.y + inward.y * 4.2 };
	const marks: Mark[] = [];
	if (edge.letter !== '') {
		marks.push(
			words(seat.x, seat.y + 1.1, edge.letter, {
				anchor: 'middle',
				weight: 'semibold',
				size: 3.4,
				halo: true,
			}),
		);
	}
	if (edge.tilt > 0) {
		const upright = Math.abs(inward.x) > 0.7;
		const far: Spot = { x: middle.x + inward.x * 9, y: middle.y + inward.y * 9 };
		const { mitre } = sideOf(p, q);
		const gauge = mitre > 0.02 ? `, gauge turned ${printAngle(mitre, ruler.decimal)}` : '';
		const text = `tilt ${printAngle(edge.tilt, ruler.decimal)}${gauge}, LONG FACE ${edge.long}`;
		marks.push(
			words(far.x, far.y + (upright ? 0 : 1), text, {
				anchor: 'middle',
				size: 2.5,
				halo: true,
				...(upright ? { turn: 90 } : {}),
			}),
		);
	}
	return marks;
}

/** Running dimensions from the lower left corner: corners of both faces, centres of holes, the whole. */
function sizes(b: BoxBoard, stage: Stage, print: Figures): Mark[] {
	const { box, view } = stage;
	const places = (axis: 'x' | 'y'): { at: number; text: string }[] => {
		const corners = b.outside.map((p) => p[axis]);
		const holes = b.holes.map((h) => h.centre[axis]);
		const all = [...corners, ...holes, axis === 'x' ? b.long.across : b.long.up];
		const marks = [...new Set(all.map((n) => Math.round(n)))].filter((n) => n > 2);
		return marks.map((n) => ({
			at: onPaper({ x: n, y: n }, view)[axis],
			text: print.bench(ticks(n)),
		}));
	};
	return [
		...running({
			axis: 'x',
			datum: box.x,
			edge: box.y + box.height,
			offset: 6,
			places: places('x'),
		}),
		...running({
			axis: 'y',
			datum: box.y + box.height,
			edge: box.x,
			offset: 6,
			places: places('y'),
		}),
	];
}

function grain(b: BoxBoard, { box }: Stage): Mark[] {
	if (b.grain === 'any') return [];
	const up = b.grain === 'up';
	const at = { x: box.x + Math.min(18, box.width * 0.3), y: box.y + box.height - 8 };
	const text = up ? '↑ GRAIN ↓' : '← GRAIN →';
	return [
		words(at.x, at.y, text, {
			anchor: 'middle',
			ink: 'pencil',
			size: 2.6,
			halo: true,
			...(up ? { turn: 90 } : {}),
		}),
	];
}

function notes(b: BoxBoard, stage: Stage, print: Figures): Mark[] {
	const head = `${b.label}  ${b.name}  ·  ${print.size(b.long.across, b.long.up)}, ${print.length(b.thickness)} thick`;
	const short = b.short.across < b.long.across - 2 || b.short.up < b.long.up - 2;
	const faces = short ? `  ·  SHORT FACE ${print.size(b.short.across, b.short.up)}` : '';
	const below = [...(b.rabbets.length > 0 ? ['rabbets inside at both ends'] : []), ...b.notes].join(
		'  ·  ',
	);
	return [
		words(stage.box.x, 6, head + faces, { weight: 'semibold' }),
		words(stage.width - 1, 11, scaleText(stage), { anchor: 'end', ink: 'pencil' }),
		...(below === '' ? [] : [words(stage.box.x, 11, below, { size: 2.5, ink: 'pencil' })]),
	];
}
