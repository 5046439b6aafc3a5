export type { BoxCloths } from './blanks';
export { boxFaces } from './faces';
export { seamSizeProblems } from './seam-sizes';
export { type BoxMade, faceByFace, inABand } from './ways';
