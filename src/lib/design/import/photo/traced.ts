import { bounds, corner, moved, snapPoint } from '../../../geometry';
import type { OutlineShape } from '../../../job';
import { mm, nth, sayLeast, TICKS_PER_MM, type Ruler } from '../../../measure';
import { refused, type Complaint, type Drawn, type Undrawn, cutCorners } from '../../shape';
import { check, aside, stop } from '../drawing-file';
import { knownFault } from '../known-length';
import { readPicture, type PictureReading } from './reading';
import { fitSides } from './sides';
import type { PhotographedPaper } from './square-up';

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

/** A paper whose edges lie this far off a line, pixels, is curled or was marked amiss. */
const CROOKED = 4;
/** So many times the expected error off its side, and this far, a mark is no slip of the hand. */
const SLIPPED = 3;
const FAR_OFF = 1.5;

/** An outline clicked over a photograph, squared up by the paper in it. */
export function tracedShape(s: Traced, ruler: Ruler): Drawn | Undrawn {
	const reading = readPicture({ ...s, corners: s.sheet, paper: photographedPaperOf(s) });
	const { squared } = reading;
	if (!squared.ok) return refusal(squared.why, squared.squash);
	const places = s.points.map((p) => squared.toMm(p));
	if (places.some((p) => !(Math.abs(p.x) < 1e4 && Math.abs(p.y) < 1e4)))
		return refused(
			'A point of the outline lies at or beyond the horizon of the picture.',
			'Click the outline on the template itself, and check the four corners of the paper.',
		);
	const errors = s.points.map((p) => squared.errorAt(p));
	const error = Math.max(...errors);
	if (error > WORST) return { outline: null, complaints: [tooRough(error, ruler)] };
	const fitted = fitSides(places.map((p, i) => ({ ...p, lies: nth(s.points, i).lies })));
	if (!fitted) return noSides(s);
	const ticks = fitted.corners.map(({ x, y, bulge }) =>
		corner(snapPoint({ x: x * TICKS_PER_MM, y: y * TICKS_PER_MM }), bulge),
	);
	const cuts = s.points.filter((p) => p.lies === 'corner').map((p) => p.cut);
	const shape = cutCorners(ticks, cuts, ruler);
	if (shape.outline === null) return shape;
	const box = bounds(shape.outline);
	const outline = moved(shape.outline, -box.x, -box.y);
	const complaints = [
		expected(error, s.picture, ruler),
		...bending(reading),
		...slips(fitted.off, errors, ruler),
		// The tape was laid between the corners as they were clicked, before any rounding.
		...knownFault(ticks, s.known, ruler),
	];
	return { ...shape, outline, complaints };
}

function noSides(s: Traced): Undrawn {
	const corners = s.points.filter((p) => p.lies === 'corner').length;
	if (corners === 0)
		return refused(
			'No circle runs through the marks: they lie on a line.',
			'Spread marks on a curve all round it, or call the corners among them corners.',
		);
	return refused(
		`The outline has ${corners === 1 ? 'one corner' : 'two corners and no curve'}: that encloses nothing.`,
		'Mark at least three corners, or two with a curve between them; a full circle has none.',
	);
}

/** What is known of the lens. */
function bending({ lens, crooked }: PictureReading): Complaint[] {
	if (!lens)
		return [
			aside(
				'How the lens bends the picture is not known, and not in the expected error: it bends most at the rim.',
				'Mark a point or two along each edge of the paper, and the bending is taken out.',
			),
		];
	if (crooked <= CROOKED) return [];
	return [
		check(
			`The edges of the paper are not straight: a mark lies ${Math.round(crooked)} pixels off its edge, the bending of the lens allowed for.`,
			'Lay the paper flat and take the picture again, or check the marks along its edges.',
		),
	];
}

/** Marks too far off the side they are said to lie on. */
function slips(off: readonly number[], errors: readonly number[], ruler: Ruler): Complaint[] {
	return off.flatMap((by, i) => {
		if (by <= Math.max(FAR_OFF, SLIPPED * nth(errors, i))) return [];
		return [
			check(
				`Mark ${i + 1} of the outline lies ${upTo(by, ruler)} off the side or corner it belongs to.`,
				'Move it, or call it a corner if the outline turns there.',
			),
		];
	});
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
