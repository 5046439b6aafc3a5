export type { HandProblem, HandSheet } from './hand-sheet';
export { freeStock, numberedAnew, withLaid } from './joined';
export { type HandFault, type HandSpot, judgeByHand, type Judgement } from './judge';
