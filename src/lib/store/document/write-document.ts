import { insideOf, ITSELF, keyOfField, listIn, thingOf, ticksIn } from './names';
import { longestRise, matchThings } from './match-things';
import { byChance, type Fresh, placesBetween } from './places';
import { marksInOrder } from './read-document';
import { isThing, jsonOf, kindOfRegister, registerFor } from './shape';
import type { RegisterEdit, SharedDocument } from './shared-document';

/** Digits of a hidden mark: two that meet in one job are less likely than a lightning stroke. */
const MARK = 10;
/** What is nested deeper than any job stands whole. */
const DEEPEST = 40;

/** The value of a field before and after, and where it stands. */
interface Change {
	readonly map: string;
	readonly key: string;
	/** The field's name, or its list's for a thing in a list. */
	readonly name: string;
	readonly before: unknown;
	readonly after: unknown;
	readonly depth: number;
}

/**
 * Brings a register, and all that hangs from it, from one plain value to another by the fewest
 * edits, in one update.
 *
 * @param before what the register holds now: parts that are the same objects in `after` are not
 *   looked into; undefined to look at everything
 * @returns what was written, for taking it back
 */
export function writeRegister(
	doc: SharedDocument,
	at: { readonly map: string; readonly key: string },
	before: unknown,
	after: unknown,
	fresh: Fresh = byChance,
): RegisterEdit[] {
	const writing = new Writing(doc, fresh);
	doc.together(() => writing.field({ ...at, name: at.key, before, after, depth: 0 }));
	return writing.edits;
}

class Writing {
	readonly edits: RegisterEdit[] = [];
	readonly #doc: SharedDocument;
	readonly #fresh: Fresh;

	constructor(doc: SharedDocument, fresh: Fresh) {
		this.#doc = doc;
		this.#fresh = fresh;
	}

	field(change: Change): void {
		const { map, key, name, before, after, depth } = change;
		if (after === undefined) return this.#takeOut(map, key);
		if (before === after && before !== undefined) return;
		const now = this.#doc.register(map, key);
		const text = depth > DEEPEST ? jsonOf(after) : registerFor(name, after, now);
		if (text !== now) {
			this.#empty(map, key);
			this.#put(map, key, text);
		}
		this.#inside(text === now ? change : { ...change, before: undefined }, text);
	}

	#inside(change: Change, text: string): void {
		const { map, key, after } = change;
		switch (kindOfRegister(text)) {
			case '{':
				return this.#object(insideOf(map, key, text.slice(1)), change);
			case '[':
				return this.#list(listIn(map, key), change);
			case '#':
				return this.#ticks(ticksIn(map, key), after as Record<string, readonly number[]>);
			case '=':
			case null:
		}
	}

	#object(map: string, { before, after, depth }: Change): void {
		const old = isThing(before) ? before : {};
		const now = after as Readonly<Record<string, unknown>>;
		const fields = Object.entries(now).filter(([, value]) => value !== undefined);
		const kept = new Set(fields.map(([name]) => keyOfField(name)));
		for (const key of this.#doc.keys(map))
			if (key !== ITSELF && !kept.has(key)) this.#takeOut(map, key);
		for (const [name, value] of fields) {
			const was = Object.hasOwn(old, name) ? old[name] : undefined;
			this.field({ map, key: keyOfField(name), name, before: was, after: value, depth: depth + 1 });
		}
	}

	#list(list: string, { name, before, after, depth }: Change): void {
		const marks = marksInOrder(this.#doc, list);
		const told = Array.isArray(before) && before.length === marks.length;
		const old: readonly unknown[] = told ? (before as unknown[]) : marks.map(() => undefined);
		const now = after as readonly unknown[];
		const matched = matchThings(old, now);
		const stay = new Set(matched);
		marks.forEach((mark, i) => {
			if (!stay.has(i)) this.#takeAway(list, mark);
		});
		const order = matched.map((i) => (i === null ? null : (marks[i] ?? null)));
		this.#place(list, order).forEach((mark, i) => {
			const [from, value] = [matched[i] ?? null, now[i]];
			const was = from === null ? undefined : old[from];
			const at = { map: thingOf(mark), key: ITSELF };
			this.field({ ...at, name, before: was, after: value, depth: depth + 1 });
		});
	}

	/** Puts the things in this order, moving as few as can be; null stands for a new one. */
	#place(list: string, order: readonly (string | null)[]): string[] {
		const held = order.map((mark) => (mark === null ? null : this.#doc.register(list, mark)));
		const stay = isRising(order, held) ? new Set(order.keys()) : longestRise(held);
		const marks = order.map((mark) => mark ?? this.#fresh(MARK));
		for (let from = 0; from < marks.length; from++) {
			if (stay.has(from)) continue;
			let to = from;
			while (to < marks.length && !stay.has(to)) to++;
			const low = from > 0 ? this.#doc.register(list, marks[from - 1] ?? '') : null;
			const high = to < marks.length ? (held[to] ?? null) : null;
			placesBetween(low, high, to - from, this.#fresh).forEach((place, i) =>
				this.#put(list, marks[from + i] ?? '', place),
			);
			from = to;
		}
		return marks;
	}

	#ticks(map: string, now: Readonly<Record<string, readonly number[]>>): void {
		const keys = Object.entries(now).flatMap(([layout, cuts]) =>
			cuts.map((n) => `${keyOfField(layout)}|${n}`),
		);
		const kept = new Set(keys);
		for (const key of this.#doc.keys(map)) if (!kept.has(key)) this.#put(map, key, null);
		for (const key of keys) this.#put(map, key, '=true');
	}

	/**
	 * A thing leaves its list; that it stood there and what it held goes, so that nothing is left.
	 */
	#takeAway(list: string, mark: string): void {
		this.#put(list, mark, null);
		this.#takeOut(thingOf(mark), ITSELF);
	}

	#takeOut(map: string, key: string): void {
		this.#empty(map, key);
		this.#put(map, key, null);
	}

	/** Takes out what hangs from a register. */
	#empty(map: string, key: string): void {
		const text = this.#doc.register(map, key);
		switch (text === null ? null : kindOfRegister(text)) {
			case '{': {
				const inside = insideOf(map, key, text?.slice(1) ?? '');
				for (const field of this.#doc.keys(inside))
					if (field !== ITSELF) this.#takeOut(inside, field);
				return;
			}
			case '[':
				for (const mark of this.#doc.keys(listIn(map, key))) this.#takeAway(listIn(map, key), mark);
				return;
			case '#':
				for (const tick of this.#doc.keys(ticksIn(map, key)))
					this.#put(ticksIn(map, key), tick, null);
				return;
			case '=':
			case null:
		}
	}

	#put(map: string, key: string, to: string | null): void {
		const edit = this.#doc.put(map, key, to);
		if (edit) this.edits.push(edit);
	}
}

/** Do they all stand in this order already? Alike places are told apart by the hidden marks. */
function isRising(order: readonly (string | null)[], held: readonly (string | null)[]): boolean {
	return order.every((mark, i) => {
		if (mark === null) return false;
		if (i === 0) return true;
		const [last, place] = [held[i - 1] ?? '', held[i] ?? ''];
		return last < place || (last === place && (order[i - 1] ?? '') < mark);
	});
}
