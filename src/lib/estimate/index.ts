export { estimate } from './estimate';
export { type OptionPrice, optionPrice } from './option-price';
export type { Order, OrderLine, Quote, SupplierOrder } from './types';
export { countedUses, sundryBooking, type SundryUse } from './sundry-booking';
