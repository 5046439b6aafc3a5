import { bounds, moved, snapPoint } from '../../geometry';
import type { OutlineShape } from '../../job';
import { mm, sayLeast, TICKS_PER_MM, type Ruler } from '../../measure';
import { refused, type Complaint, type Drawn, type Undrawn, cutCorners } from '../shape';
import { check, stop } from './drawing-file';
import { knownFault } from './known-length';
import { squareUp, type PhotographedPaper } from './square-up';

type Traced = Extract<OutlineShape, { kind: 'traced' }>;

/** ISO 216 and the North American letter sheet, mm. */
const PAPER_SIZES = { a4: [210, 297], letter: [215.9, 279.4] } as const;

export function photographedPaperOf(s: Pick<Traced, 'paper' | 'lying'>): PhotographedPaper {
	const [short, long] = PAPER_SIZES[s.paper];
	return s.lying === 'upright' ? { width: short, height: long } : { width: long, height: short };
}

/** Worse than this the outline is no use for a hairline gap. */
const WORST = 4;
/** Worse than this it wants checking with a tape. */
const DOUBTFUL = 1;

/** An outline clicked over a photograph, squared up by the paper in it. */
export function tracedShape(s: Traced, ruler: Ruler): Drawn | Undrawn {
	const squared = squareUp(s.sheet, photographedPaperOf(s));
	if (!squared.ok) return refusal(squared.why, squared.squash);
	const points = s.points.map((p) => squared.toMm(p));
	if (points.some((p) => !(Math.abs(p.x) < 1e4 && Math.abs(p.y) < 1e4)))
		return refused(
			'A point of the outline lies at or beyond the horizon of the picture.',
			'Click the outline on the template itself, and check the four corners of the paper.',
		);
	const error = Math.max(...s.points.map((p) => squared.errorAt(p)));
	if (error > WORST) return { outline: null, complaints: [tooRough(error, ruler)] };
	const ticks = points.map((p) => snapPoint({ x: p.x * TICKS_PER_MM, y: p.y * TICKS_PER_MM }));
	const shape = cutCorners(
		ticks,
		s.points.map((p) => p.cut),
		ruler,
	);
	if (shape.outline === null) return shape;
	const box = bounds(shape.outline);
	const outline = moved(shape.outline, -box.x, -box.y);
	// The tape was laid between the corners as they were clicked, before any rounding.
	return {
		...shape,
		outline,
		complaints: [expected(error, s.picture, ruler), ...knownFault(ticks, s.known, ruler)],
	};
}

function refusal(why: 'corners' | 'oblique', squash: number): Undrawn {
	if (why === 'corners')
		return refused(
			'The four corners of the paper do not make a sheet of paper.',
			'Mark them in this order: top left, top right, bottom right, bottom left.',
		);
	const angle = Math.round((Math.acos(squash) * 180) / Math.PI);
	return refused(
		`The picture was taken about ${angle}° from straight above; its far end cannot be trusted.`,
		'Take it again from above the middle of the template, as high as you can.',
	);
}

function tooRough(error: number, ruler: Ruler): Complaint {
	return stop(
		`The outline can be off by ${upTo(error, ruler)}: the paper is too small in the picture, or too far from the outline.`,
		'Lay the paper in the middle of the template and take the picture from higher up with more of it in the frame.',
	);
}

function expected(error: number, picture: string, ruler: Ruler): Complaint {
	const from = picture === '' ? 'a picture' : `the picture ${picture}`;
	return check(
		`Traced from ${from}: expect the outline to be off by up to ${upTo(error, ruler)} at its worst corner.`,
		error > DOUBTFUL
			? 'Check it against the opening with a tape, and cut a test piece from cardboard first.'
			: 'Check one known length against the opening before cutting.',
	);
}

/** Millimetres, a tenth too many rather than too few. */
const upTo = (error: number, ruler: Ruler): string =>
	sayLeast(mm(Math.ceil(error * 10) / 10), ruler);
