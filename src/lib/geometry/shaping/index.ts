export { chain, type EdgeRun } from './chain';
export {
	common,
	commonArea,
	grown,
	linesInside,
	linesOutside,
	type Region,
	regionArea,
	union,
	without,
} from './clip';
export { convexParts } from './convex';
export { cropped } from './crop';
export { arcsAlong, cubic, type Curve, ellipse } from './curve';
export { forbidden } from './minkowski';
export { type CornerShape, cutCorner, takenBy } from './round-corner';
export { headingsAt } from './set-curve';
export { setIn, setInAll, type SetOutline } from './set-in';
export { simplifiedOutward } from './simplify';
export { circle, rectangle, type Tidied, tidy } from './tidy';
