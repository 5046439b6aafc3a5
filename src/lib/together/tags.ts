import type { Job } from '../job';

/** Short enough to stand before a mark on a label, and no dot: ids are parted by dots. */
const SHORT = /^[A-Za-z0-9][A-Za-z0-9_-]{0,9}$/;

/**
 * What the marks of each job begin with: its number, where that is short and no other job has it;
 * else a letter that nobody has.
 */
export function tagsOf(jobs: readonly Pick<Job, 'number'>[]): string[] {
	const numbers = jobs.map(({ number }) => number.trim());
	const own = (n: string): boolean =>
		SHORT.test(n) && numbers.indexOf(n) === numbers.lastIndexOf(n);
	const taken = new Set(numbers.filter(own));
	let next = 0;
	return numbers.map((number) => {
		if (own(number)) return number;
		let letter: string;
		do letter = letterOf(next++);
		while (taken.has(letter));
		return letter;
	});
}

/** A to Z, then A1, B1 … */
const letterOf = (n: number): string =>
	String.fromCharCode(65 + (n % 26)) + (n < 26 ? '' : String(Math.floor(n / 26)));

/** The mark that a thing of this job has among those of all. */
export const idOf = (tag: string, id: string): string => `${tag}.${id}`;

/** The number of all of them, for labels of offcuts and the foot of the page: '0142+0151'. */
export function joinedNumber(tags: readonly string[]): string {
	const all = tags.join('+');
	return all.length <= LONGEST ? all : `${tags[0] ?? ''}+${tags.length - 1}`;
}

/** An offcut's label holds no longer one. */
const LONGEST = 12;
