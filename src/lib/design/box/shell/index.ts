export { endFrame, plate } from './end';
export { type Shell, shellOf, sweptSectionOf } from './shell';
export type { SweptSection } from './swept-section';
export { LEAST_EDGE, openFront, rectangleHole, roundHole } from './trim';
export { sideFrame, sweptSolid } from './wall';
