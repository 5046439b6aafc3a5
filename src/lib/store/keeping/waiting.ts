/**
 * No answer for so long is a failure: the same is tried again, and an answer that comes late is
 * none.
 */
export class NoAnswer extends Error {
	override readonly name = 'NoAnswer';
}

/** The promise, or a `NoAnswer` after so many milliseconds. */
export function within<T>(ms: number, promise: Promise<T>): Promise<T> {
	return new Promise((resolve, reject) => {
		const timer = setTimeout(() => reject(new NoAnswer(`no answer in ${ms} ms`)), ms);
		void promise.then(resolve, reject).finally(() => clearTimeout(timer));
	});
}

/** A wait that can be cut short. */
export class Pause {
	#end: () => void = () => undefined;

	wait(ms: number): Promise<void> {
		return new Promise((resolve) => {
			const timer = setTimeout(resolve, ms);
			this.#end = () => {
				clearTimeout(timer);
				resolve();
			};
		});
	}

	end(): void {
		this.#end();
	}
}

/** How long to wait for an answer, and after the first, second … failure: ever longer. */
export interface Waits {
	readonly answer: number;
	readonly first: number;
	readonly most: number;
}

/**
 * In milliseconds. A full disk may be cleared at any time; a lost minute of retries costs nothing.
 */
export const USUAL_WAITS: Waits = { answer: 5000, first: 500, most: 30_000 };

export const waitAfter = ({ first, most }: Waits, failures: number): number =>
	Math.min(most, first * 2 ** Math.min(20, failures - 1));
