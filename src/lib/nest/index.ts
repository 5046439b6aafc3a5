export { auditRoll, auditSheets } from './audit';
export {
	freeStock,
	type HandFault,
	type HandProblem,
	type HandSheet,
	type HandSpot,
	judgeByHand,
	type Judgement,
	numberedAnew,
	withLaid,
} from './by-hand';
export { packets } from './packets';
export { withPinned } from './pinned';
export { random, type Random } from './random';
export { nestRoll } from './roll';
export { nestRouter, packSheets, readyRouter } from './router';
export { type NearMiss, nearMisses } from './savings';
export { nestSaw, type Pair, sameSetting, settingsFor, taperOf } from './saw';
export type {
	AuditFault,
	Budget,
	Cut,
	Gives,
	Piece,
	Placed,
	RollAnswer,
	RollPiece,
	RollProblem,
	RollSpot,
	RouterProblem,
	SawProblem,
	Search,
	Sheet,
	SheetLayout,
	SheetsAnswer,
} from './types';
