export {
	allSavings,
	bookingOf,
	boundText,
	changedSince,
	heldOn,
	layBoards,
	layByHand,
	letAllGo,
	letGo,
	offcutLabels,
	packetsOf,
	pieces,
	pinSheet,
	proofText,
	type Saving,
	type Stack,
	unpinSheet,
} from './boards';
export { alikeSheets } from './alike-sheets';
export { shortMarkOf } from './as-made';
export { bookedIn, type Booking, type TakenStock, type Taking, type Yielded } from './booked';
export { complaints } from './complaints';
export type { BoardLayouts, ClothLayouts, CutWay, RollLayout } from './layouts';
export { DrawnSheets, undrawnText } from './most-cuts';
export { EFFORT } from './pace';
export { type Carpeting, chooseWays, layCloths, type PricedWay, pullBooking } from './rolls';
export { sayMarks } from './say-marks';
export {
	type Progress,
	remember,
	type SearchOptions,
	type SearchRecord,
	SearchSession,
} from './search-session';
export {
	laySound,
	markSpoiled,
	type SpoiledAt,
	spoilRefusal,
	type WayAgain,
	waysAgain,
} from './spoil';
