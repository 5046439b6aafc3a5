export {
	type Air,
	airHolds,
	reach,
	reachSides,
	type SweptAir,
	type TaperedAir,
	volumeOfAir,
} from './air';
export { apart } from './apart';
export type { Plane } from './plane';
export {
	clashingQuads,
	convex,
	crossed,
	insideAngle,
	type Past,
	type Quad,
	quads,
	quadsOverlap,
	quadWithin,
	sideLine,
	sidesSetIn,
} from './section';
export {
	type Across,
	ENDS,
	faceWithin,
	hexCorners,
	hexVolume,
	leastOf,
	level,
	mapPlanes,
	meet3,
	ON,
	opens,
	type Planes,
	ROUND,
	sidesAround,
	type Six,
	SIX,
	stretch,
} from './six';
export { type SlotPlane, slotPlane } from './slot-plane';
export {
	bodyVolume,
	edgeTilt,
	faceArea,
	flat,
	type Frame,
	frameOf,
	over,
	planeArea,
	raised,
	slab,
	type Solid,
	volumeOf,
	weighBody,
	type Weighed,
} from './solid';
export { type BoardStrip, crossingsOf, halfOf, stripAcross } from './strip';
export {
	add3,
	angleBetween,
	cross3,
	dot3,
	length3,
	middle3,
	p3,
	type Point3,
	scale3,
	sub3,
	unit3,
} from './vec';
export { cubicTicks, litres, type Taken } from './volume';
