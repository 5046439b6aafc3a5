export { materialsOf, MINUTES_OF, timesOf } from './against';
export { estimate } from './estimate';
export { type OptionPrice, optionPrice } from './option-price';
export type { Order, OrderLine, Quote, SupplierOrder } from './types';
export { countedUses, sundryBooking, type SundryUse } from './sundry-booking';
export { type OwnTime, ownTimes } from './own-times';
