/*
 * SHA-256 as FIPS 180-4 gives it. The browser's own is asynchronous, and is not there at all on a
 * page that came over plain http.
 */

/** The first 32 bits of the fractional parts of the square roots of the first primes (5.3.3). */
const START = /* @__PURE__ */ fractions(8, Math.sqrt);
/** The same of the cube roots (4.2.2). */
const ROUNDS = /* @__PURE__ */ fractions(64, Math.cbrt);

/** The hash of these bytes, 64 hex digits. */
export function sha256(bytes: Uint8Array): string {
	const state = Uint32Array.from(START);
	const words = new Uint32Array(64);
	const whole = bytes.length - (bytes.length % 64);
	const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
	for (let at = 0; at < whole; at += 64) block(state, words, view, at);
	const end = padded(bytes.subarray(whole), bytes.length);
	for (let at = 0; at < end.byteLength; at += 64) block(state, words, end, at);
	return [...state].map((word) => word.toString(16).padStart(8, '0')).join('');
}

/** A one, noughts, and the length in bits (5.1.1). */
function padded(rest: Uint8Array, length: number): DataView {
	const end = new Uint8Array(rest.length < 56 ? 64 : 128);
	end.set(rest);
	end[rest.length] = 0x80;
	const view = new DataView(end.buffer);
	view.setUint32(end.length - 8, Math.floor(length / 0x2000_0000));
	view.setUint32(end.length - 4, (length * 8) >>> 0);
	return view;
}

/** One block into the state (6.2.2). */
function block(state: Uint32Array, words: Uint32Array, bytes: DataView, at: number): void {
	for (let t = 0; t < 16; t++) words[t] = bytes.getUint32(at + 4 * t);
	for (let t = 16; t < 64; t++) {
		const [far, near] = [word(words, t - 15), word(words, t - 2)];
		const small = turned(far, 7) ^ turned(far, 18) ^ (far >>> 3);
		const large = turned(near, 17) ^ turned(near, 19) ^ (near >>> 10);
		words[t] = word(words, t - 16) + small + word(words, t - 7) + large;
	}
	let [a, b, c, d, e, f, g, h] = state as unknown as Eight;
	for (let t = 0; t < 64; t++) {
		const chosen = (e & f) ^ (~e & g);
		const first =
			h +
			(turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)) +
			chosen +
			word(ROUNDS, t) +
			word(words, t);
		const most = (a & b) ^ (a & c) ^ (b & c);
		const second = (turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + most;
		[h, g, f, e, d, c, b, a] = [g, f, e, (d + first) | 0, c, b, a, (first + second) | 0];
	}
	[a, b, c, d, e, f, g, h].forEach((sum, i) => (state[i] = word(state, i) + sum));
}

type Eight = [number, number, number, number, number, number, number, number];

const word = (words: Uint32Array, i: number): number => words[i] ?? 0;
const turned = (x: number, by: number): number => (x >>> by) | (x << (32 - by));

function fractions(count: number, root: (prime: number) => number): Uint32Array {
	const primes: number[] = [];
	for (let n = 2; primes.length < count; n++) if (primes.every((p) => n % p > 0)) primes.push(n);
	return Uint32Array.from(primes, (prime) => (root(prime) % 1) * 2 ** 32);
}
