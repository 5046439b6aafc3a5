import { expose } from 'comlink';

/** Lets the page call `what` across the worker's wall. */
export function offer<T extends object>(what: T): void {
	expose(what);
}
