export type { HandProblem, HandSheet } from './hand-sheet';
export { freeStock, joined, numberedAnew } from './joined';
export { type HandSpot, judge } from './judge';
