export { estimate } from './estimate';
export type { Order, OrderLine, Quote } from './types';
