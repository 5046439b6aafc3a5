export { items } from './items';
export { makeOrder } from './order';
export { makeQuote } from './quote';
export type { Amount, Order, OrderLine, Quote } from './types';
