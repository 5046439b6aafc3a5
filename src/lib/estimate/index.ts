export { estimate } from './estimate';
export type { Amount, Order, OrderLine, Quote } from './types';
