export { columnOf, firstOrders } from './first-layouts';
export { fillColumns, type FreeSpot, SpanTables, type Strip } from './free-columns';
export { searchFree } from './free-roll';
export { fillPattern, type Lattice, type PatternStrip } from './pattern-columns';
export { type FreeKind, type FreePiece, type FreeShape, readyShapes } from './free-shape';
export { GapCheck, type LaidPiece } from './gap-check';
export type { FreeState } from './strip-search';
