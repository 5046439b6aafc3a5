export type { HandProblem, HandSheet } from './hand-sheet';
export { freeStock, joined, numberedAnew } from './joined';
export { type HandFault, type HandSpot, judge, type Judgement } from './judge';
