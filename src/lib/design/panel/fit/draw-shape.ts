import { mm, type Ruler } from '../../../measure';
import {
	area,
	bounds,
	crossings,
	edgeLength,
	edgesOf,
	onOneLine,
	tidy,
	mirrored,
	mirrorOrder,
	moved,
	turned,
} from '../../../geometry';
import type { PlacedShape, OutlineShape } from '../../../job';
import {
	type Complaint,
	type Drawn,
	type Undrawn,
	circleShape,
	cornersShape,
	ovalShape,
	polylineShape,
	rectangleShape,
	sayHair,
	sayPlace,
	sayRough,
	trapezoidShape,
} from '../../shape';
import { importShape } from '../../import';

/**
 * The outline a person's shape stands for, counter-clockwise on the grid, checked; or why there is
 * none.
 */
export function drawShape(shape: OutlineShape, ruler: Ruler): Drawn | Undrawn {
	const raw = outlineOf(shape, ruler);
	if (raw.outline === null) return raw;
	const clean = withoutDoubled(raw);
	const faults = faultsOf(clean, ruler);
	const complaints = [...clean.complaints, ...faults];
	if (faults.some((f) => f.kind === 'stop')) return { outline: null, complaints };
	return { ...clean, complaints };
}

function outlineOf(shape: OutlineShape, ruler: Ruler): Drawn | Undrawn {
	switch (shape.kind) {
		case 'rectangle':
			return rectangleShape(shape, ruler);
		case 'trapezoid':
			return trapezoidShape(shape, ruler);
		case 'polyline':
			return polylineShape(shape, ruler);
		case 'circle':
			return circleShape(shape);
		case 'oval':
			return ovalShape(shape);
		case 'corners':
			return cornersShape(shape);
		default:
			return importShape(shape, ruler);
	}
}

/** A shape of its own put where it belongs on the panel. */
export function placeShape(placed: PlacedShape, ruler: Ruler): Drawn | Undrawn {
	const shape = drawShape(placed.shape, ruler);
	if (shape.outline === null) return shape;
	const flipped = placed.mirror ? mirrored(shape.outline) : shape.outline;
	const outline = moved(turned(flipped, placed.turn), placed.x, placed.y);
	return { ...shape, outline, sides: placed.mirror ? mirrorOrder(shape.sides) : shape.sides };
}

/** Corners given twice stand for one; the edge between them is left out. */
function withoutDoubled(raw: Drawn): Drawn {
	const keep = edgesOf(raw.outline).map((e) => edgeLength(e) > 2);
	if (keep.every(Boolean)) return raw;
	const doubled = keep.filter((k) => !k).length;
	return {
		outline: raw.outline.filter((_, i) => keep[i]),
		sides: raw.sides.filter((_, i) => keep[i]),
		complaints: [
			...raw.complaints,
			{
				kind: 'check',
				what: `${doubled === 1 ? 'A corner is' : `${doubled} corners are`} given twice; each is taken once.`,
				fix: 'Take the doubled corners out.',
			},
		],
	};
}

/** Larger than any panel of a vehicle: most likely the drawing is in another unit. */
const LARGEST = mm(4500);
/** Nothing that stands in a vehicle; its thousands of pages would keep anybody waiting. */
const HUGE = mm(15_000);
const SMALLEST = mm(3);

function faultsOf(d: Drawn, ruler: Ruler): Complaint[] {
	if (d.outline.length < 2 || onOneLine(d.outline)) return [noArea];
	// Looked for first: lobes of equal size take each other's area away.
	const [cross] = crossings(d.outline, 1);
	if (cross) return [crossed(d, cross, ruler)];
	if (area(d.outline) < SMALLEST) return [noArea];
	const box = bounds(d.outline);
	const across = Math.max(box.length, box.width);
	const slivers = tidy(d.outline, 16).slivers;
	return [
		...(across > LARGEST ? [farTooLarge(across, ruler)] : []),
		...(slivers > 0 ? [spiked(slivers, ruler)] : []),
	];
}

const noArea: Complaint = {
	kind: 'stop',
	what: 'The outline has no area.',
	fix: 'Give at least three corners that do not lie on one line.',
};

function crossed(
	d: Drawn,
	{ edges, at }: ReturnType<typeof crossings>[number],
	ruler: Ruler,
): Complaint {
	const name = (i: number): string =>
		d.sides[i] === null ? 'a rounded corner' : `edge ${d.sides[i]}`;
	const corners = d.outline.filter((p) => Math.hypot(p.x - at.x, p.y - at.y) <= 2);
	if (corners.length > 1)
		return {
			kind: 'stop',
			what: `A corner of the outline is given twice, at ${sayPlace(at, ruler)}: ${name(edges[0])} and ${name(edges[1])} meet there.`,
			fix: 'Take one of the two out; give the corners in order round the outline.',
		};
	return {
		kind: 'stop',
		what: `The outline crosses itself: ${name(edges[0])} meets ${name(edges[1])} at ${sayPlace(at, ruler)}.`,
		fix: 'Give the corners in order round the outline.',
	};
}

function farTooLarge(across: number, ruler: Ruler): Complaint {
	const huge = across > HUGE;
	return {
		kind: huge ? 'stop' : 'check',
		what: `The outline measures ${sayRough(across, ruler)} across, more than any panel of a vehicle${huge ? ': it is not planned' : ''}.`,
		fix: `Check its unit and scale${huge ? `; ${sayRough(HUGE, ruler)} is the most` : ''}.`,
	};
}

function spiked(slivers: number, ruler: Ruler): Complaint {
	return {
		kind: 'check',
		what: `${slivers === 1 ? 'One corner is' : `${slivers} corners are`} a spike thinner than ${sayHair(ruler)}.`,
		fix: 'Take the corner out; no saw or router can follow it.',
	};
}
