export { clothEdge, flapAreas, foldCorner, foldLine } from './develop';
export { type Flap, flapsOf, type FlapWidth } from './flap';
export { type Climb, type LaidCloth, layOver, smoothShift, STILL } from './girth';
export { boardSpans, breaks, CHORD_ERROR, outOf, type Span, turnTo, windowSpans } from './span';
