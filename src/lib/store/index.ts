export { docOfJob, NewerStore, openStore, type Store, type StoredJob } from './database';
