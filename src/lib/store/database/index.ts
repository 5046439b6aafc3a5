export { openStore } from './open-store';
export {
	docOfJob,
	type Everything,
	type FoundJob,
	SHOP_DOC,
	type StoredJob,
	type StoredRevision,
	type StoredStep,
	type StoredUpdate,
	tracedIn,
} from './records';
export type { Beside, Store } from './store';
