import { nth } from '../../../lib/measure';
import type { Random } from '../../../lib/nest';
import { pick, strangeNumber, strangeText, strangeValue } from './strange';

/*
 * A tree of JSON, changed in a place or a few, as a slip of the hand, another program or somebody
 * who means harm might change it.
 */

type Holder = Record<string, unknown> | unknown[];
interface Place {
	readonly holder: Holder;
	readonly key: string;
}

/** `times` changes in places drawn from the whole tree. The tree itself is changed. */
export function mutateTree(root: Record<string, unknown>, times: number, dice: Random): void {
	for (let n = 0; n < times; n++) {
		const places = placesOf(root);
		if (places.length === 0) return;
		change(pick(places, dice), places, dice);
	}
}

function placesOf(root: Holder): Place[] {
	const found: Place[] = [];
	const open: Holder[] = [root];
	for (let holder = open.pop(); holder !== undefined; holder = open.pop())
		for (const key of Object.keys(holder)) {
			found.push({ holder, key });
			const value = at({ holder, key });
			if (typeof value === 'object' && value !== null) open.push(value as Holder);
		}
	return found;
}

const at = ({ holder, key }: Place): unknown => (holder as Record<string, unknown>)[key];

function put({ holder, key }: Place, value: unknown): void {
	Object.defineProperty(holder, key, {
		value,
		enumerable: true,
		configurable: true,
		writable: true,
	});
}

function change(place: Place, places: readonly Place[], dice: Random): void {
	const value = at(place);
	if (dice.int(8) === 0) return put(place, strangeValue(dice));
	if (dice.int(12) === 0) return put(place, structuredClone(at(pick(places, dice))));
	if (typeof value === 'number') return put(place, otherNumber(value, dice));
	if (typeof value === 'string') return put(place, otherText(value, places, dice));
	if (typeof value === 'boolean') return put(place, dice.int(2) ? !value : strangeValue(dice));
	if (Array.isArray(value)) return changeList(place, value, dice);
	if (typeof value === 'object' && value !== null)
		return changeRecord(value as Record<string, unknown>, dice);
	put(place, strangeValue(dice));
}

function otherNumber(n: number, dice: Random): unknown {
	const near = [n + 1, n - 1, -n, n * 2, n / 2, n * 10, n / 10, n * 1000, n / 1000, n + 0.01, 0];
	return dice.int(3) > 0 ? pick(near, dice) : strangeNumber(dice);
}

function otherText(text: string, places: readonly Place[], dice: Random): unknown {
	const draw = dice.int(6);
	if (draw === 0) return strangeNumber(dice);
	if (draw === 1) return text + strangeText(dice);
	if (draw === 2) return text.slice(0, dice.int(text.length + 1));
	// A mark, a kind or a word that means something elsewhere in the job.
	const words = places.map(at).filter((v) => typeof v === 'string');
	if (draw < 5) return pick(words, dice);
	return strangeText(dice);
}

function changeList(place: Place, list: unknown[], dice: Random): void {
	const draw = dice.int(12);
	if (draw < 3 || list.length === 0) return put(place, draw === 0 ? {} : []);
	const one = dice.int(list.length);
	if (draw < 6) list.splice(one, 1);
	else if (draw < 9) list.splice(one, 0, structuredClone(nth(list, one)));
	else if (draw === 9) list.reverse();
	else if (draw === 10) list.push(strangeValue(dice));
	else put(place, grown(list, dice));
}

/** As many entries as no person types, for one in some cases as many as a field may hold. */
function grown(list: readonly unknown[], dice: Random): unknown[] {
	const wanted = pick([5, 20, 20, 60, 60, 200, 1000, 3000], dice);
	return Array.from({ length: wanted }, (_, i) => {
		const copy = structuredClone(nth(list, i % list.length));
		if (dice.int(2) && typeof copy === 'object' && copy !== null && 'id' in copy)
			copy.id = `${String(copy.id)}-${i}`;
		return copy;
	});
}

function changeRecord(record: Record<string, unknown>, dice: Random): void {
	const keys = Object.keys(record);
	const draw = dice.int(8);
	if (draw < 4 && keys.length > 0) delete record[pick(keys, dice)];
	else if (draw === 4) put({ holder: record, key: strangeText(dice) }, strangeValue(dice));
	else if (draw === 5 && keys.length > 1) {
		const [a, b] = [pick(keys, dice), pick(keys, dice)];
		const kept = record[a];
		record[a] = record[b];
		record[b] = kept;
	} else if (draw === 6 && keys.length > 0) {
		let deep: unknown = 1;
		for (let n = pick([5, 20, 40, 45, 60, 500], dice); n > 0; n--) deep = n % 2 ? [deep] : { deep };
		record[pick(keys, dice)] = deep;
	} else put({ holder: record, key: '__proto__' }, { name: 'x', length: 1 });
}
