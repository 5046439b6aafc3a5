import { createContext } from 'svelte';
import type { Store } from '../../store';
import type { Desk } from './desk.svelte';
import type { Holding } from './holding.svelte';

/** What every part of the screen works at. */
export interface DeskContext {
	readonly desk: Desk;
	readonly store: Store;
	/** What the person works at. */
	readonly hand: Holding;
}

export const [room, setRoom] = createContext<DeskContext>();
