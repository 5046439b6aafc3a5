export { Keeper, type Saving } from './keeper';
export { Shelf } from './shelf';
export { waitAfter, type Waits } from './waiting';
