export { tickCut, tickedCuts } from './bench-work';
export { layoutKey } from './layout-key';
export { room, setRoom } from './context';
export { Desk } from './desk.svelte';
export { insert, listAt, pathKey, put, startsWith } from './edits';
export { focusAt } from './focus-at';
export { Holding } from './holding.svelte';
export { lastGood } from './last-good';
export {
	type DeskOpening,
	firstJob,
	firstOfShop,
	newEmpty,
	newFromSample,
	newId,
	openingOfRecord,
} from './opening';
export { BEHIND } from './plan-watch.svelte';
export { joinByLink, liveOf, secretIn, SharedView, usualDeviceName } from './sharing';
export { askForRoom, leaveWords, leaveWriterMark, pageStorage, takeWords } from './saving';
