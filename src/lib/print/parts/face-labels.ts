import type { LetteredEdge, Operation, WorkFace } from '../../design';
import { bounds, circle, type Outline, type Point } from '../../geometry';
import { toMm } from '../../measure';
import {
	boxInRing,
	boxOffRing,
	line,
	type Mark,
	onPaper,
	ringPath,
	type Spot,
	textBox,
	type TextMark,
} from '../drawing';
import { LabelSlots, placesRound, type Stage, words } from '../marks';
import { cornerLetter, type Figures } from '../wording';

const SIZE = 2.5;
/** Between one number and the next: '1d' and '1c' must not read as one, mm. */
const APART = 0.9;

/** Something on the face that is called by its number or letter. */
interface Called {
	readonly text: string;
	readonly at: Spot;
	/** How far it reaches round that spot, mm of paper; 0 for a corner. */
	readonly reach: number;
	/** Room for its number within it? */
	readonly holds: boolean;
}

/**
 * Letters of the edges, numbers of all that is made, letters of corners, the grain: each where no
 * line and no other word runs through it, numbers by a leader where it is crowded.
 */
export function faceLabels(
	face: WorkFace,
	stage: Stage,
	lines: readonly Mark[],
	taken: readonly Mark[],
	f: Figures,
): Mark[] {
	const room = { x: 0.5, y: 0.5, width: stage.width - 1, height: stage.height - 1 };
	const slots = new LabelSlots(room, APART);
	slots.keepOff(taken);
	slots.keepOffLines([...lines, ...taken]);
	const marks: Mark[] = [];
	const put = (places: readonly TextMark[]): TextMark | null => {
		const mark = slots.put(places);
		if (mark) marks.push(mark);
		return mark;
	};
	for (const edge of face.edges) put(edgePlaces(edge, tiltsAt(face, edge.letter, f), stage));
	for (const called of calledOn(face, stage)) {
		const mark = slots.put(calledPlaces(called));
		if (mark) marks.push(...leader(mark, called), mark);
	}
	put(grainPlaces(face, stage));
	return marks;
}

/** 'C', or 'C 21.3°' where the edge is bevelled. */
function tiltsAt(face: WorkFace, letter: string, f: Figures): string[] {
	const cut = face.operations.find((op) => op.kind === 'bevel' && op.edge.letter === letter);
	return cut?.kind === 'bevel' ? [`${letter} ${f.angle(cut.tilt)}`, letter] : [letter];
}

const ALONG = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9];

function edgePlaces(edge: LetteredEdge, texts: readonly string[], { view }: Stage): TextMark[] {
	if (edge.letter === '') return [];
	const [from, to] = [onPaper(edge.from, view), onPaper(edge.to, view)];
	const long = Math.hypot(to.x - from.x, to.y - from.y) || 1;
	// Into the board: to the left of its edge, which is to the left on paper too, y down.
	const inward = { x: (to.y - from.y) / long, y: -(to.x - from.x) / long };
	return texts.flatMap((text) =>
		[3, 4.4, 2.2, 6, 8, -2.6].flatMap((off) =>
			ALONG.map((t) =>
				words(
					from.x + t * (to.x - from.x) + inward.x * off,
					from.y + t * (to.y - from.y) + inward.y * off + 1,
					text,
					{ anchor: 'middle', weight: 'semibold', size: 3, halo: true },
				),
			),
		),
	);
}

function calledOn(face: WorkFace, stage: Stage): Called[] {
	return face.operations.flatMap((op) => calledBy(op, stage));
}

function calledBy(op: Operation, stage: Stage): Called[] {
	const { view } = stage;
	const corner = (text: string, p: Point): Called => ({
		text,
		at: onPaper(p, view),
		reach: 0,
		holds: false,
	});
	if (op.kind === 'holes') {
		const reach = Math.max(0.5, (toMm(op.diameter) / 2) * view.scale);
		return op.at.map((p, i) => ({
			text: `${op.n + i}`,
			at: onPaper(p, view),
			reach,
			holds: reach > 3,
		}));
	}
	if (op.kind === 'outline')
		return op.form.kind === 'corners'
			? op.form.corners.map((c, i) => corner(cornerLetter(i), c.at))
			: [];
	if (op.kind !== 'cut' && op.kind !== 'rabbet' && op.kind !== 'place') return [];
	const box = bounds(op.outline);
	const middle = onPaper({ x: box.x + box.length / 2, y: box.y + box.width / 2 }, view);
	const reach = (toMm(Math.min(box.length, box.width)) / 2) * view.scale;
	return [
		{ text: `${op.n}`, at: middle, reach, holds: true },
		...(op.form.kind === 'corners'
			? op.form.corners.map((c, i) => corner(`${op.n}${cornerLetter(i)}`, c.at))
			: []),
	];
}

/** In it, then round it in widening rings, above and to the right first. */
function calledPlaces({ text, at, reach, holds }: Called): TextMark[] {
	const mark = (dx: number, dy: number): TextMark =>
		words(at.x + dx, at.y + dy + SIZE * 0.35, text, {
			anchor: 'middle',
			size: SIZE,
			halo: true,
			weight: 'semibold',
		});
	const within = holds
		? [0, 3.4, -3.4, 7, -7, 12, -12].flatMap((dy) =>
				[0, 3.6, -3.6, 8, -8, 14, -14].map((dx) => mark(dx, dy)),
			)
		: [];
	const round = placesRound(reach).map(({ x, y }) => mark(x, y));
	return [...within, ...round];
}

/** A number that stands off its thing is joined to it. */
function leader(mark: TextMark, { at, reach, holds }: Called): Mark[] {
	const box = textBox(mark);
	const near = (value: number, from: number, long: number): number =>
		Math.max(from, Math.min(value, from + long));
	const x = near(at.x, box.x, box.width);
	const y = near(at.y, box.y, box.height);
	const far = Math.hypot(x - at.x, y - at.y);
	const close = holds ? Math.max(reach, 16) : reach + 2.6;
	if (far <= close) return [];
	const to = holds ? 0 : reach / far;
	return [
		{
			kind: 'path',
			steps: line(x, y, at.x + (x - at.x) * to, at.y + (y - at.y) * to),
			line: 'hair',
			ink: 'pencil',
		},
	];
}

/** On the wood: over a hole it would say nothing of the board. */
function grainPlaces(face: WorkFace, { box, view }: Stage): TextMark[] {
	if (face.grain === 'any') return [];
	const up = face.grain === 'up';
	const text = up ? '↑ GRAIN ↓' : '← GRAIN →';
	const look = { anchor: 'middle', ink: 'pencil', size: 2.4, halo: true } as const;
	const holes = face.operations.flatMap((op) => holesOf(op)).map((o) => ringPath(o, view));
	const ring = ringPath(face.outline, view);
	const shares = [0.5, 0.2, 0.8, 0.35, 0.65, 0.12, 0.88];
	const places = [0.88, 0.12, 0.75, 0.25, 0.5, 0.94, 0.06].flatMap((y) =>
		shares.map((x) =>
			words(box.x + box.width * x, box.y + box.height * y + 0.9, text, {
				...look,
				...(up ? { turn: 90 } : {}),
			}),
		),
	);
	return places.filter((mark) => {
		const at = textBox(mark);
		return boxInRing(at, ring) && holes.every((hole) => boxOffRing(at, hole));
	});
}

function holesOf(op: Operation): Outline[] {
	if (op.kind === 'cut') return [op.outline];
	if (op.kind !== 'holes') return [];
	return op.at.map(({ x, y }) => circle(x, y, op.diameter / 2));
}
