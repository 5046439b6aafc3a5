export type { BoxCloths } from './blanks';
export { boxFaces } from './faces';
export { type BoxMade, faceByFace, inABand } from './ways';
