import type { Store } from '../../../store';

const KEY = 'persist';

/** What the browser said: does it keep what is here even when it is short of room? */
export type RoomAnswer = 'kept' | 'refused' | 'cannot ask';

/**
 * Asks the browser once to keep its database even when it is short of room, and notes the answer;
 * after that the answer is what it was. Null when it could not be noted.
 */
export async function askForRoom(
	store: Pick<Store, 'thing' | 'setThing'>,
	storage: Pick<StorageManager, 'persist'> | undefined = globalThis.navigator?.storage,
): Promise<RoomAnswer | null> {
	try {
		const known = await store.thing(KEY);
		if (known === 'kept' || known === 'refused') return known;
		const answer = !storage?.persist
			? 'cannot ask'
			: (await storage.persist())
				? 'kept'
				: 'refused';
		await store.setThing(KEY, answer);
		return answer;
	} catch {
		return null;
	}
}
