export { tickCut, tickedCuts } from './bench-work';
export { room, setRoom } from './context';
export { Desk, type DeskOpening } from './desk.svelte';
export { firstJob, newEmpty, newFromSample, newId } from './first-job';
export { listAt, pathKey } from './path';
export { rulerOf } from './rack';
export { leaveWords, OtherWindows, takeWords } from './saving';
