export { type JobWork, shareCosts } from './shares';
export { pullIn, sheetsIn, tallyOf } from './tally';
export type { JobShare, JoinedBoards, JoinedCloth, Tally, Together, LaidWay } from './together';
export { costOfBoards, costOfCloth, type LayoutCost } from './worth';
