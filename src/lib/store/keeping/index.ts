export { Keeper, type Saving } from './keeper';
export { Shelf } from './shelf';
export { waitAfter, type Waits, within } from './waiting';
