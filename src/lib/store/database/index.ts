export {
	docOfJob,
	type Everything,
	SHOP,
	type StoredJob,
	type StoredRevision,
	type StoredStep,
	type StoredUpdate,
} from './records';
export { type Addition, type Beside, NewerStore, type Store } from './store';
export { openStore } from './open-store';
