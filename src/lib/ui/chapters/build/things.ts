import { type JobFile, type Path, valueAt } from '../../../job';
import { listAt } from '../../state';

/**
 * What is worked at by itself on the job card: a box, a panel, the parts, the runs, the
 * photographs, the card.
 */
export interface Thing {
	/** As the address has it: 'boxes/0'. */
	readonly key: string;
	readonly kind: 'box' | 'panel' | 'parts' | 'runs' | 'photographs' | 'about';
	readonly name: string;
	readonly path: Path;
}

/** All of a job, in the order of its cards. */
export function thingsOf(file: JobFile): Thing[] {
	return [
		...listed(file, 'boxes', 'box', 'Box'),
		...listed(file, 'panels', 'panel', 'Panel'),
		...(listAt(file, ['parts']).length > 0 ? [PARTS] : []),
		...(listAt(file, ['runs']).length > 0 ? [RUNS] : []),
		...(listAt(file, ['photographs']).length > 0 ? [PHOTOGRAPHS] : []),
		ABOUT,
	];
}

const PARTS: Thing = { key: 'parts', kind: 'parts', name: 'List of parts', path: ['parts'] };
const RUNS: Thing = { key: 'runs', kind: 'runs', name: 'Runs', path: ['runs'] };
const PHOTOGRAPHS: Thing = {
	...{ key: 'photographs', kind: 'photographs', name: 'Photographs', path: ['photographs'] },
};
const ABOUT: Thing = { key: 'about', kind: 'about', name: 'About the job', path: [] };

function listed(
	file: JobFile,
	list: 'boxes' | 'panels',
	kind: 'box' | 'panel',
	word: string,
): Thing[] {
	return listAt(file, [list]).map((_, i) => {
		const name = valueAt(file, [list, i, 'name']);
		const shown = typeof name === 'string' && name !== '' ? name : `${word} ${i + 1}`;
		return { key: `${list}/${i}`, kind, name: shown, path: [list, i] };
	});
}

/**
 * The thing an address names: '#build/boxes/0'. One that is gone gives way to the last of its list,
 * an address that names none to the first of all; null on an empty card.
 */
export function thingAt(file: JobFile, hash: string): Thing | null {
	const all = thingsOf(file);
	const asked = hash.replace(/^#build\/?/, '');
	if (asked === 'parts') return PARTS;
	if (asked === 'runs') return RUNS;
	if (asked === 'photographs') return PHOTOGRAPHS;
	const list = asked.split('/')[0] ?? '';
	const near = list === '' ? undefined : all.findLast((t) => t.key.startsWith(list));
	const found = all.find((t) => t.key === asked) ?? near ?? all[0] ?? null;
	return asked === '' && found === ABOUT ? null : found;
}
