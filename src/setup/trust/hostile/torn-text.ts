import type { Random } from '../../../lib/nest';
import { pick, strangeNumber, strangeText } from './strange';

/*
 * A text of any kind torn, doubled and salted. What it is a text of does not matter, but for the
 * words that mean something there.
 */

/** `times` changes; `words`: what means something in texts of this kind. */
export function tornText(
	text: string,
	times: number,
	words: readonly string[],
	dice: Random,
): string {
	let torn = text;
	for (let n = 0; n < times; n++) torn = tear(torn, words, dice);
	return torn.slice(0, LONGEST);
}

/** Letters; repeats of repeats would else grow without end. */
const LONGEST = 400_000;

function tear(text: string, words: readonly string[], dice: Random): string {
	const from = dice.int(Math.min(text.length, 2_000_000) + 1);
	const to = Math.min(text.length, from + dice.int(dice.int(2) ? 8 : 200) + 1);
	const [head, middle, tail] = [text.slice(0, from), text.slice(from, to), text.slice(to)];
	switch (dice.int(10)) {
		case 0:
			return head + tail;
		case 1:
			return head + middle + middle + tail;
		case 2:
			return head + middle.repeat(pick([5, 50, 500], dice)) + tail;
		case 3:
			return dice.int(4) ? head + strangeText(dice) + tail : head;
		case 4:
			return head + pick(words, dice) + middle + tail;
		case 5:
			return head + pick(words, dice).repeat(pick([3, 30, 3000], dice)) + tail;
		case 6:
			return head + String.fromCharCode(dice.int(65_536)) + tail;
		default:
			return otherNumberIn(text, dice);
	}
}

/** One of the numbers in it made another. */
function otherNumberIn(text: string, dice: Random): string {
	const numbers = [...text.matchAll(/-?\d+(\.\d+)?/g)];
	if (numbers.length === 0) return text + strangeText(dice);
	const found = pick(numbers, dice);
	const value = Number(found[0]);
	const near = [-value, value * 10, value / 10, value + 1, 0, value * 1e6];
	const other = dice.int(2) ? pick(near, dice) : strangeNumber(dice);
	const written = String(other).replaceAll('@@', '');
	return text.slice(0, found.index) + written + text.slice(found.index + found[0].length);
}
