export {
	docOfJob,
	type Everything,
	SHOP_DOC,
	type StoredJob,
	type StoredRevision,
	type StoredStep,
	type StoredUpdate,
} from './records';
export { type Beside, type Store } from './store';
export { openStore } from './open-store';
