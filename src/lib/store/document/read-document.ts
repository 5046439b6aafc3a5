import { fieldOf, insideOf, ITSELF, listIn, thingOf, ticksIn } from './names';
import { kindOfRegister } from './shape';
import type { SharedDocument } from './shared-document';

/** Deeper than any job; what comes in from elsewhere may hold anything. */
const DEEPEST = 200;

/** The plain value in a register; undefined where nothing stands, or nothing that can be read. */
export function readRegister(doc: SharedDocument, map: string, key: string): unknown {
	return new Reader(doc).value(map, key, 0);
}

/** The hidden marks of a list's things that stand in it, in order. */
export function marksInOrder(doc: SharedDocument, list: string): string[] {
	return doc
		.keys(list)
		.filter((mark) => doc.register(thingOf(mark), ITSELF) !== null)
		.map((mark) => [doc.register(list, mark) ?? '', mark] as const)
		.sort(([a, i], [b, j]) => (a < b || (a === b && i < j) ? -1 : 1))
		.map(([, mark]) => mark);
}

class Reader {
	readonly #doc: SharedDocument;
	/** A thing stands in one list, once: else a forged update could make it hold itself. */
	readonly #met = new Set<string>();

	constructor(doc: SharedDocument) {
		this.#doc = doc;
	}

	value(map: string, key: string, depth: number): unknown {
		const text = this.#doc.register(map, key);
		if (text === null || depth > DEEPEST) return undefined;
		switch (kindOfRegister(text)) {
			case '=':
				return parsed(text.slice(1));
			case '{':
				return this.#object(insideOf(map, key, text.slice(1)), depth);
			case '[':
				return this.#list(listIn(map, key), depth);
			case '#':
				return this.#ticks(ticksIn(map, key));
			case null:
				return undefined;
		}
	}

	#object(map: string, depth: number): Record<string, unknown> {
		const fields = this.#doc.keys(map).filter((key) => key !== ITSELF);
		return objectOf(
			fields.sort().map((key) => [fieldOf(key), this.value(map, key, depth + 1)] as const),
		);
	}

	#list(map: string, depth: number): unknown[] {
		const items: unknown[] = [];
		for (const mark of marksInOrder(this.#doc, map)) {
			if (this.#met.has(mark)) continue;
			this.#met.add(mark);
			const item = this.value(thingOf(mark), ITSELF, depth + 1);
			items.push(item === undefined ? null : item);
		}
		return items;
	}

	/** Ticks stand singly, `layout|cut`, so that two benches may tick at once. */
	#ticks(map: string): Record<string, unknown> {
		const layouts = new Map<string, number[]>();
		for (const key of this.#doc.keys(map).sort()) {
			const bar = key.lastIndexOf('|');
			const layout = fieldOf(key.slice(0, bar));
			const n = Number(key.slice(bar + 1));
			if (bar < 0 || layout === null || !Number.isSafeInteger(n)) continue;
			layouts.set(layout, [...(layouts.get(layout) ?? []), n]);
		}
		return objectOf([...layouts].map(([layout, cuts]) => [layout, cuts.sort((a, b) => a - b)]));
	}
}

/** A field may be called anything, `__proto__` too. */
function objectOf(fields: readonly (readonly [string | null, unknown])[]): Record<string, unknown> {
	const object: Record<string, unknown> = {};
	for (const [name, value] of fields) {
		if (name === null || value === undefined) continue;
		if (name !== '__proto__') object[name] = value;
		else
			Object.defineProperty(object, name, {
				value,
				enumerable: true,
				configurable: true,
				writable: true,
			});
	}
	return object;
}

function parsed(text: string): unknown {
	try {
		return JSON.parse(text);
	} catch {
		return undefined;
	}
}
