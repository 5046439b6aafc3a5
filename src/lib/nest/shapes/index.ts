export { fillColumns, SpanTables, type Strip } from './free-columns';
export { columnOf, firstOrders, type FreeState, searchFree } from './free-roll';
export { type FreeKind, type FreePiece, type FreeShape, readyShapes } from './free-shape';
export { GapCheck } from './gap-check';
