import type { Path, Problem } from '../problems';
import type { JobOption } from './option';

type Change = JobOption['changes'][number];

/** A job file with an option in it, or why that cannot be. */
export interface WithOption {
	readonly file: unknown;
	readonly problems: readonly Problem[];
}

/**
 * The file with the changes of an option made, in their order, and without any options of its own.
 * Every change that names nothing there is told, at its place under `at`. The file given is left
 * alone.
 */
export function withOption(file: unknown, option: JobOption, at: Path): WithOption {
	const tree: unknown = structuredClone(file);
	const problems = option.changes.flatMap((change, i): Problem[] => {
		const told = made(tree, change);
		if (told === null) return [];
		return [{ path: [...at, 'changes', i, told.field], kind: 'check', ...told.said }];
	});
	if (isHolder(tree)) Reflect.deleteProperty(tree, 'options');
	return { file: tree, problems };
}

interface Told {
	readonly field: 'path' | 'value';
	readonly said: { readonly what: string; readonly fix: string };
}

type Holder = Record<string | number, unknown>;

function made(tree: unknown, change: Change): Told | null {
	const steps = change.path.split('/').filter((step) => step !== '');
	const last = steps.at(-1) ?? '';
	const holder = steps.slice(0, -1).reduce<unknown>(stepInto, tree);
	const key = isHolder(holder) ? keyIn(holder, last) : null;
	if (!isHolder(holder) || key === null) return missing(change);
	if (change.do === 'remove') return taken(holder, key, change);
	const value = valueOf(change.value);
	if (change.do === 'add') return added(holder, key, value, change);
	holder[key] = value;
	return null;
}

function taken(holder: Holder, key: string | number, change: Change): Told | null {
	if (!Object.hasOwn(holder, key)) return missing(change);
	if (Array.isArray(holder)) holder.splice(Number(key), 1);
	else Reflect.deleteProperty(holder, key);
	return null;
}

function added(holder: Holder, key: string | number, value: unknown, change: Change): Told | null {
	const list = Object.hasOwn(holder, key) ? holder[key] : [];
	if (!Array.isArray(list)) return missing(change);
	if (!isHolder(value)) {
		const what = `Nothing can be added to ${change.path}: the value is no thing.`;
		return { field: 'value', said: { what, fix: 'Write the whole thing as JSON.' } };
	}
	holder[key] = [...(list as unknown[]), value];
	return null;
}

function missing({ path }: Change): Told {
	return {
		field: 'path',
		said: {
			what: `The option changes ${path}, and the job has no such place.`,
			fix: 'Write the way to a field of the job, things by their marks: panels/cover-panel/cloth.',
		},
	};
}

/** Of a list the thing with this mark, else the one of this number; of a thing the field. */
function keyIn(holder: Holder, step: string): string | number | null {
	if (!Array.isArray(holder)) return step === '__proto__' ? null : step;
	const marked = holder.findIndex((thing: unknown) => isHolder(thing) && thing['id'] === step);
	if (marked >= 0) return marked;
	return /^\d{1,5}$/.test(step) && Number(step) < holder.length ? Number(step) : null;
}

function stepInto(here: unknown, step: string): unknown {
	if (!isHolder(here)) return undefined;
	const key = keyIn(here, step);
	return key !== null && Object.hasOwn(here, key) ? here[key] : undefined;
}

/** What is no JSON is a text: a mark, a length with its unit. */
function valueOf(text: string): unknown {
	try {
		return JSON.parse(text) as unknown;
	} catch {
		return text;
	}
}

const isHolder = (value: unknown): value is Holder => typeof value === 'object' && value !== null;
