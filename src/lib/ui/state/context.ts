import { createContext } from 'svelte';
import type { Store } from '../../store';
import type { Desk } from './desk.svelte';

/** What every part of the screen works at. */
export interface DeskContext {
	readonly desk: Desk;
	readonly store: Store;
}

export const [room, setRoom] = createContext<DeskContext>();
