/*
 * Work counted instead of timed: a clock says how busy the machine is, these say how much was asked
 * of it. Counted are the steps through lists and texts that nearly all of our work is made of,
 * whoever takes them.
 */

type Method = (this: unknown, ...args: unknown[]) => unknown;

/** Those that take one step, wherever they are called. */
const SINGLE: readonly (readonly [object, readonly string[]])[] = [
	[String.prototype, ['charCodeAt', 'codePointAt', 'charAt', 'slice']],
	[RegExp.prototype, ['exec', 'test']],
	[Array.prototype, ['push', 'pop', 'at']],
	[Map.prototype, ['get', 'set', 'has']],
	[Set.prototype, ['add', 'has']],
	[Math, ['hypot', 'round', 'sqrt', 'atan2', 'abs', 'min', 'max']],
	[Object.getPrototypeOf([][Symbol.iterator]()) as object, ['next']],
];
/** Those that walk the whole list they are called on. */
const WALKS =
	'map flatMap filter some every find findIndex forEach reduce concat slice indexOf includes sort'.split(
		' ',
	);

/** Steps that this work takes; the same on every machine, however busy. */
export function stepsOf(work: () => void): number {
	let steps = 0;
	const restore: (() => void)[] = [];
	const count = (owner: object, name: string, cost: (self: unknown) => number): void => {
		const own = Object.getOwnPropertyDescriptor(owner, name)!;
		const method = own.value as Method;
		const counted: Method = function (...args) {
			steps += cost(this);
			return Reflect.apply(method, this, args);
		};
		Object.defineProperty(owner, name, { ...own, value: counted });
		restore.push(() => Object.defineProperty(owner, name, own));
	};
	for (const [owner, names] of SINGLE) for (const name of names) count(owner, name, () => 1);
	for (const name of WALKS) count(Array.prototype, name, (list) => (list as unknown[]).length);
	try {
		work();
	} finally {
		for (const back of restore) back();
	}
	return steps;
}
