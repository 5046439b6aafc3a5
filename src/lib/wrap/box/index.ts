export { type Band, bandsOf } from './band';
export { bandBlank, type BoxCloth, faceBlank } from './blanks';
export { type BoxFace, boxFaces, type BoxFaces } from './faces';
export { seamSizeProblems } from './seam-sizes';
export { edgeEnd, type EdgeEnd, seamed, type SeamSizes } from './seams';
