export { auditRoll, auditSheets } from './audit/index';
export { packets } from './packets';
export { withPinned } from './pinned';
export { random, type Random } from './random';
export { nestRoll } from './roll/index';
export { nestRouter, packSheets, readyRouter } from './router/index';
export { type NearMiss, nearMisses } from './savings';
export { nestSaw, type Pair, taperOf } from './saw/index';
export type { AuditFault, Budget, Cut, Gives, Piece, Placed, RollAnswer, RollPiece, RollProblem, RouterProblem, SawProblem, Search, Sheet, SheetLayout, SheetsAnswer } from './types';
