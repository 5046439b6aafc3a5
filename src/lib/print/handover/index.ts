export { customerCard } from './customer-card';
export { shopCard } from './shop-card';
