export { type FormCorner, formOf, type OutlineForm } from './form';
export type { CutLine, EdgeName, Operation, PartFace } from './operation';
export { type Designed, workOn } from './work';
export { type LetteredEdge, needsWork, type WorkFace, type WorkPiece } from './work-piece';
