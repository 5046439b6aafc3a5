export { openStore } from './open-store';
export {
	docOfJob,
	type Everything,
	SHOP_DOC,
	type StoredJob,
	type StoredRevision,
	type StoredStep,
	type StoredUpdate,
} from './records';
export type { Beside, Store } from './store';
