import { valueAt, type Path } from '../../../job';
/**
 * A copy of `root` with `value` there; everything beside the way is shared with the original.
 * `undefined` takes the key out of an object. What is missing on the way is made: an array before
 * an index, an object before a key.
 */
export function put<T>(root: T, path: Path, value: unknown): T {
	return placed(root, path, value) as T;
}

function placed(here: unknown, path: Path, value: unknown): unknown {
	const [step, ...rest] = path;
	if (step === undefined) return value;
	const copy = copyOf(here, step);
	const inside = Object.hasOwn(copy, step) ? copy[step] : undefined;
	const next = placed(inside, rest, value);
	if (next === undefined && !Array.isArray(copy)) delete copy[step];
	else copy[step] = next;
	return copy;
}

function copyOf(here: unknown, step: string | number): Record<string | number, unknown> {
	if (Array.isArray(here)) return here.slice() as unknown as Record<number, unknown>;
	if (typeof here === 'object' && here !== null) return { ...here };
	return (typeof step === 'number' ? [] : {}) as Record<string | number, unknown>;
}

/** A copy with `value` put into the list at `path` before `index` (at its end by default). */
export function insert<T>(root: T, path: Path, value: unknown, index?: number): T {
	const list = listAt(root, path);
	const where = index ?? list.length;
	return put(root, path, [...list.slice(0, where), value, ...list.slice(where)]);
}

/** A copy without the item `index` of the list at `path`. */
export function remove<T>(root: T, path: Path, index: number): T {
	return put(
		root,
		path,
		listAt(root, path).filter((_, i) => i !== index),
	);
}

/** A copy with the item `from` of the list moved to stand at `to`. */
export function move<T>(root: T, path: Path, from: number, to: number): T {
	const list = listAt(root, path).slice();
	const [item] = list.splice(from, 1);
	list.splice(to, 0, item);
	return put(root, path, list);
}

export function listAt(root: unknown, path: Path): readonly unknown[] {
	const found = valueAt(root, path);
	return Array.isArray(found) ? found : [];
}

export function startsWith(path: Path, start: Path): boolean {
	return path.length >= start.length && start.every((step, i) => step === path[i]);
}

/** One text for one path, for keys and the `data-at` of fields. */
export function pathKey(path: Path): string {
	return path.join('/');
}
