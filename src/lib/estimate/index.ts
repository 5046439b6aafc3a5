export {
	countedUses,
	materialsOf,
	MINUTES_OF,
	minutesNow,
	type OwnTime,
	ownTimes,
	sundryBooking,
	type SundryUse,
	takeOwnTime,
	timesOf,
} from './after-work';
export { withoutUsed } from './booked';
export { estimate, estimateLeft } from './estimate';
export {
	costOfBoards,
	costOfCloth,
	type JobShare,
	type JobWork,
	type JoinedBoards,
	type JoinedCloth,
	type LayoutCost,
	pullIn,
	shareCosts,
	sheetsIn,
	type Tally,
	tallyOf,
	type Together,
	type LaidWay,
} from './jobs';
export { type OptionPrice, optionPrice } from './option-price';
export type { Order, OrderLine, Quote, SupplierOrder } from './types';
