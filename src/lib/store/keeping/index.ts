export { Keeper, type SaveState } from './keeper';
export { Shelf, type Watcher } from './shelf';
export { Pause, waitAfter, type Waits, within } from './waiting';
