export { openStore } from './open-store';
export {
	docOfJob,
	docOfPicture,
	type Everything,
	type FoundJob,
	hashIn,
	SHOP_DOC,
	type StoredJob,
	type StoredRevision,
	type StoredStep,
	type StoredUpdate,
	tracedIn,
} from './records';
export type { Beside, Store } from './store';
