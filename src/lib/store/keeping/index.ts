export { Keeper, type SaveState } from './keeper';
export { Shelf } from './shelf';
export { waitAfter, type Waits, within } from './waiting';
