const FIRST_SLOTS = 1 << 12; // a power of two, as all sizes after it
const LOW = 2 ** 26; // keys are hashed in two halves of 26 bits

/**
 * Whole numbers from 1 to 2^52, each with a whole number: a third of the room and of the time of a
 * Map with such keys.
 */
export class SetTable {
	private keys = new Float64Array(FIRST_SLOTS); // 0: free
	private values = new Int32Array(FIRST_SLOTS);
	size = 0;

	/** The number held for a key, or -1. */
	get(key: number): number {
		const at = this.slot(key);
		return this.keys[at] === key ? this.values[at]! : -1;
	}

	/** Holds a number, 0 or more, for a key that has none yet. */
	add(key: number, value: number): void {
		if (this.size * 3 > this.keys.length * 2) this.grow();
		const at = this.slot(key);
		this.keys[at] = key;
		this.values[at] = value;
		this.size++;
	}

	/** Where the key is or would be. */
	private slot(key: number): number {
		const { keys } = this;
		const high = Math.floor(key / LOW);
		const low = key - high * LOW;
		let hash = Math.imul(low ^ Math.imul(high, 0x2545f491), 0x9e3779b1);
		hash ^= hash >>> 15;
		let at = hash & (keys.length - 1);
		while (keys[at] !== 0 && keys[at] !== key) at = (at + 1) & (keys.length - 1);
		return at;
	}

	private grow(): void {
		const { keys, values } = this;
		this.keys = new Float64Array(keys.length * 2);
		this.values = new Int32Array(keys.length * 2);
		for (let i = 0; i < keys.length; i++) {
			if (keys[i] === 0) continue;
			const at = this.slot(keys[i]!);
			this.keys[at] = keys[i]!;
			this.values[at] = values[i]!;
		}
	}
}
