import { bounds, boundsOfPoints, type Outline, type Rect } from '../../geometry';
import type { Box, Path } from '../../job';
import {
	aboveSides,
	type DrawnBox,
	frontSides,
	gripOf,
	measureOf,
	sideSides,
} from './box-measures';
import { bracesSeen, mountedSeen, together } from './box-things';
import {
	ABOVE,
	facesSeen,
	FRONT,
	insideSeen,
	sectionSeen,
	settled,
	SIDE,
	type Sight,
} from './project';
import type { Grip, StageShape, StageView } from './stage-view';

/** Front, side and top of a box, with a field at every dimension that is one. */
export function boxStage(drawn: DrawnBox): StageView[] {
	const { boards, profile } = drawn.figures;
	const [front, side, above] = [FRONT, SIDE, ABOVE].map((s) => settled(boards, s));
	if (!front || !side || !above) return [];
	return [
		viewOf(drawn, front, facesSeen(boards, front), frontSides(drawn)),
		viewOf(
			drawn,
			side,
			profile ? sectionSeen(boards, side) : facesSeen(boards, side),
			sideSides(drawn),
		),
		viewOf(drawn, above, facesSeen(boards, above), aboveSides(drawn)),
	];
}

function viewOf(
	drawn: DrawnBox,
	sight: Sight,
	body: readonly StageShape[],
	sides: ReturnType<typeof frontSides>,
): StageView {
	const inside = insideSeen(drawn.figures.boards, sight);
	const space = spaceSeen(drawn.box, drawn.figures.outside, sight);
	const shapes = [...space, ...body, ...inside];
	const things = together([mountedSeen(drawn, sight), bracesSeen(drawn, sight)]);
	return {
		key: sight.key,
		title: sight.key === 'side' && !drawn.figures.profile ? 'From the right' : sight.title,
		around: roundAll(shapes),
		shapes: [...shapes, ...things.shapes],
		measures: [...sides.map((s) => measureOf(s, drawn)), ...things.measures],
		grips: [
			...sides.flatMap((s) => gripOf(s, drawn)),
			...(sight.key === 'side' ? cornerGrips(drawn) : []),
			...things.grips,
		],
	};
}

/** Room in the vehicle, bare; the box stands on its floor, in the middle, against its back. */
function spaceSeen(
	{ space }: Box,
	size: { readonly width: number; readonly height: number; readonly depth: number },
	sight: Sight,
): StageShape[] {
	if (!space) return [];
	const { clearance: c } = space;
	const left = (size.width - space.width) / 2;
	const front = size.depth + c - space.depth;
	const top = space.depthTop ?? space.depth;
	const ring: Outline = {
		front: rectangle({ x: left, y: -c, length: space.width, width: space.height }),
		above: rectangle({ x: left, y: front, length: space.width, width: space.depth }),
		side: [
			{ x: front, y: -c },
			{ x: front + space.depth, y: -c },
			{ x: front + top, y: space.height - c },
			{ x: front, y: space.height - c },
		],
	}[sight.key];
	return [{ outlines: [ring], line: 'space' }];
}

const rectangle = ({ x, y, length, width }: Rect): Outline => [
	{ x, y },
	{ x: x + length, y },
	{ x: x + length, y: y + width },
	{ x, y: y + width },
];

/** Free corners of the profile, each to be dragged. */
function cornerGrips({ box, at }: DrawnBox): Grip[] {
	const { shape } = box;
	if (shape.kind !== 'free' || shape.drawing || box.sizes === 'inner') return [];
	const low = bounds(shape.corners);
	return shape.corners.map((corner, i) => {
		const path: Path = [...at, 'shape', 'corners', i];
		return {
			label: `Corner ${i + 1}`,
			at: { x: corner.x - low.x, y: corner.y - low.y },
			moves: [
				{ path: [...path, 'x'], along: 'x', grows: 1, value: corner.x, least: -Infinity },
				{ path: [...path, 'y'], along: 'y', grows: 1, value: corner.y, least: -Infinity },
			],
		};
	});
}

function roundAll(shapes: readonly StageShape[]): Rect {
	return boundsOfPoints(shapes.flatMap((s) => s.outlines.flat()));
}
