import type { Store } from '../../../src/lib/store/database/store';

/**
 * What a call of the store may come to. `refused`: not done, and said so. `torn`: done, and said
 * not
 * to be. `silent`: not done, and never answered. `late`: done, and never answered.
 */
export type Fault = 'none' | 'refused' | 'torn' | 'silent' | 'late';
export const FAULTS: readonly Fault[] = ['none', 'refused', 'torn', 'silent', 'late'];

/** The calls the keeping of documents makes; each of them may go wrong. */
const CALLS = ['thing', 'updatesAfter', 'append', 'compact', 'steps'] as const;

/** A store whose calls go wrong as they are told to, one after the other; then they are sound. */
export function faulty(store: Store, next: () => Fault): Store {
	const wrapped = { ...store };
	for (const call of CALLS) {
		const sound = store[call] as (...args: unknown[]) => Promise<unknown>;
		const unsound = async (...args: unknown[]): Promise<unknown> => {
			const fault = next();
			if (fault === 'refused') throw new DOMException('no room', 'QuotaExceededError');
			if (fault === 'silent') return new Promise(() => undefined);
			const answer = await sound(...args);
			if (fault === 'torn') throw new DOMException('cut off', 'AbortError');
			return fault === 'late' ? new Promise(() => undefined) : answer;
		};
		Object.assign(wrapped, { [call]: unsound });
	}
	return wrapped;
}
