export { estimate } from './estimate';
export type { Order, OrderLine, Quote, SupplierOrder } from './types';
