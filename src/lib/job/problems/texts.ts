import type { Path } from './problem';

/** A text somewhere in a file. */
export interface TextAt {
	readonly holder: object;
	readonly key: string;
	readonly text: string;
	readonly path: Path;
}

/**
 * A drawing carried along in a file has lines and letters of its own, and is never shown as text.
 */
const DRAWING = 'text';
/** Deeper than any job; the reader refuses what is nested farther. */
const DEEPEST = 64;

/**
 * Every text of a file that may be shown, in the order of the file. No recursion: a hostile file is
 * nested deeply.
 */
export function* textsIn(tree: unknown): Generator<TextAt, void, void> {
	const stack: { readonly value: unknown; readonly path: Path }[] = [{ value: tree, path: [] }];
	for (let visit = stack.pop(); visit; visit = stack.pop()) {
		const { value: holder, path } = visit;
		if (typeof holder !== 'object' || holder === null || path.length > DEEPEST) continue;
		const inner: typeof stack = [];
		for (const [key, value] of Object.entries(holder) as [string, unknown][]) {
			const here = [...path, Array.isArray(holder) ? Number(key) : key];
			if (typeof value === 'object') inner.push({ value, path: here });
			else if (typeof value === 'string' && key !== DRAWING)
				yield { holder, key, text: value, path: here };
		}
		stack.push(...inner.reverse());
	}
}
