export { findPaper, type FoundPaper } from './find-paper';
export { type PictureReading, readPicture } from './reading';
export type { Squared } from './square-up';
export { photographedPaperOf, tracedShape } from './traced';
