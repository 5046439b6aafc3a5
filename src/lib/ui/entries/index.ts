export { aboutAt, stemOf } from './about';
export type { Choice, Entry, Field, Kinds, List, Refers, Simple } from './entry';
export { freeMark, fresh, freshWay, startCorners } from './fresh';
export { freshIn } from './fresh-in';
export { inherited } from './inherited';
export { isCorner, isPlain } from './kinds-of-entry';
export { BOX, JOB, PANEL, SHOP, STOCK } from './schemas';
export { tally } from './tally';
