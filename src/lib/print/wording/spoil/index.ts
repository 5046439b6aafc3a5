export { cutNow } from './cut-now';
export { pieceAt, spoilWayTexts } from './ways';
