import type { BoxBoard } from '../../design';
import { boundsOfPoints, moved, type Outline } from '../../geometry';
import { ticks, toMm } from '../../measure';
import { edgeLetters } from './board-labels';
import { facingFrom, type Facing } from './facing';
import { type Drawing, type Mark, onPaper, wrapped } from '../drawing';
import { LabelSlots, outlineMark, running, scaleText, stageFor, words, type Stage } from '../marks';
import type { Figures } from '../wording';

const MARGINS = { left: 30, right: 22, top: 12, bottom: 30 };
const WIDE = 180;
const LEADING = 4.6;
const SMALL = 2.5;

type Placing = BoxBoard['placing'][number];
type Foot = Placing['feet'][number];

/**
 * Where to draw lines on the faces of a board before anything is set on it: what each other board
 * covers, measured from the lower left corner of the face as it lies before you. One drawing for
 * each face that carries something.
 */
export function placingDrawings(b: BoxBoard, print: Figures): Drawing[] {
	return b.placing.map((placing) => placingDrawing(b, placing, print));
}

function placingDrawing(b: BoxBoard, placing: Placing, print: Figures): Drawing {
	const f = facingFrom(b, placing.face);
	const face = boundsOfPoints(f.near);
	const stage = stageFor({ x: 0, y: 0, length: f.long.across, width: f.long.up }, MARGINS);
	const feet = placing.feet.map((foot) => ({
		...foot,
		outline: moved(foot.outline, face.x, face.y),
	}));
	const title = `${f.label} ${f.name}: placing lines on its ${placing.face}`;
	const marks: Mark[] = [
		outlineMark([f.near], stage.view, 'wide', { of: `part:${f.label}` }),
		...f.holes.map((h) => outlineMark([h.outline], stage.view, 'hair')),
		...feet.map(({ outline }) => outlineMark([outline], stage.view, 'dashed')),
		...sizes(f, feet, stage, print),
		words(
			MARGINS.left,
			6,
			`Seen from ${placing.face}, measured from the lower left corner of that face; between the dashed lines stands the board named`,
			{ size: SMALL, ink: 'pencil' },
		),
		words(stage.width - 1, MARGINS.top - 1, scaleText(stage), { anchor: 'end', ink: 'pencil' }),
	];
	const slots = new LabelSlots({ x: 1, y: 0, width: stage.width - 2, height: stage.height });
	slots.keepOff(marks);
	for (const letter of edgeLetters(f, stage)) {
		const mark = slots.put(letter);
		if (mark) marks.push(mark);
	}
	const under: string[] = [];
	for (const foot of feet) {
		const mark = slots.put(labelPlaces(foot, stage));
		if (mark) marks.push(mark);
		if (!mark?.text.endsWith(foot.name)) under.push(legend(foot, face, print));
	}
	const lines = wrapped([...new Set(under)].join('  ·  '), WIDE - 4, SMALL).filter((l) => l !== '');
	return {
		width: WIDE,
		height: stage.height + lines.length * LEADING,
		title,
		marks: [
			...marks,
			...lines.map((line, i) => words(2, stage.height + i * LEADING + 3, line, { size: SMALL })),
		],
	};
}

/** In the middle of what it covers or along it: with its name, else by its mark alone. */
function labelPlaces(foot: Foot, stage: Stage) {
	const { x, y, length, width } = boundsOfPoints(foot.outline);
	const upright = width > length;
	const look = { anchor: 'middle', halo: true, size: SMALL } as const;
	const [across, up] = [toMm(length) * stage.scale, toMm(width) * stage.scale];
	return [`${foot.label} ${foot.name}`, foot.label].flatMap((text) =>
		[0.5, 0.3, 0.7, 0.15, 0.85].flatMap((share) => {
			const p = onPaper(
				upright
					? { x: x + length / 2, y: y + width * share }
					: { x: x + length * share, y: y + width / 2 },
				stage.view,
			);
			const off = (upright ? across : up) / 2 + 2.4;
			const spots = off < 5 ? [off + 0.9, 0.9 - off, 0.9] : [0.9, off + 0.9, 0.9 - off];
			return spots.map((d) =>
				upright
					? words(p.x + d, p.y, text, { ...look, turn: 90 })
					: words(p.x, p.y + d, text, look),
			);
		}),
	);
}

/** What is said under the drawing of one that is marked there by its mark alone. */
function legend(foot: Foot, face: { x: number; y: number }, print: Figures): string {
	const { x, y, length, width } = boundsOfPoints(foot.outline);
	const span = (from: number, long: number): string =>
		`${print.bench(ticks(Math.round(from)))} to ${print.bench(ticks(Math.round(from + long)))}`;
	const across = span(x - face.x, length);
	return `${foot.label} ${foot.name}: ${across} from the left, ${span(y - face.y, width)} up`;
}

/** Running dimensions from the lower left corner of the face to every line and its far edges. */
function sizes(f: Facing, feet: readonly Foot[], stage: Stage, print: Figures): Mark[] {
	const { box, view } = stage;
	const face = boundsOfPoints(f.near);
	const outlines: Outline[] = [f.near, ...feet.map((foot) => foot.outline)];
	const places = (axis: 'x' | 'y'): { at: number; text: string }[] => {
		const from = face[axis];
		const all = new Set(outlines.flatMap((o) => o.map((p) => Math.round(p[axis] - from))));
		const seen = new Map<string, number>();
		for (const n of [...all].filter((n) => n > 2)) seen.set(print.bench(ticks(n)), n);
		return [...seen].map(([text, n]) => ({
			at: onPaper({ x: n + face.x, y: n + face.y }, view)[axis],
			text,
		}));
	};
	const datum = onPaper(face, view);
	return [
		...running({
			axis: 'x',
			datum: datum.x,
			edge: box.y + box.height,
			offset: 6,
			places: places('x'),
			room: [MARGINS.left, WIDE - 2],
		}),
		...running({
			axis: 'y',
			datum: datum.y,
			edge: box.x,
			offset: 6,
			places: places('y'),
			room: [MARGINS.top, stage.height - 2],
		}),
	];
}
