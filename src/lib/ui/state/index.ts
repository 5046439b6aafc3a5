export { tickCut, tickedCuts } from './bench-work';
export { room, setRoom } from './context';
export { Desk } from './desk.svelte';
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
export { listAt, pathKey } from './path';
export { rulerOf } from './ruler';
export { joinByLink, secretIn, SharedView, usualDeviceName } from './sharing';
export { askForRoom, leaveWords, leaveWriterMark, pageStorage, takeWords } from './saving';
