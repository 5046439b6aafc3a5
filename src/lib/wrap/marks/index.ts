export type { ClothShape } from './cloth-shape';
export { cornerPatches, lotOf, patchNote } from './corner-patches';
export { coveringBlank, type Extra, NO_EXTRA } from './covering-blank';
export { clothParts, type ClothPiece, cutAlong, type SeamLine, wholePiece } from './cut-along';
export { doubtsOf } from './verdicts';
