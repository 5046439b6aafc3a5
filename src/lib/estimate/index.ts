export {
	countedUses,
	materialsOf,
	MINUTES_OF,
	type OwnTime,
	ownTimes,
	sundryBooking,
	type SundryUse,
	timesOf,
} from './after-work';
export { estimate } from './estimate';
export { type OptionPrice, optionPrice } from './option-price';
export type { Order, OrderLine, Quote, SupplierOrder } from './types';
