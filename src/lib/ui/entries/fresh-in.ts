import { type JobFile, type Path, valueAt } from '../../job';
import { insert, listAt } from '../state';
import { aboutAt } from './about';
import type { Entry } from './entry';
import { fresh } from './fresh';

/**
 * A new thing for the list at `path`, of a size and at a place where it goes into its parent:
 * nothing that stands already is stopped by it.
 */
export async function freshIn(
	file: JobFile,
	path: Path,
	name: string,
	item: Entry,
): Promise<unknown> {
	const made = fresh(item, name, aboutAt(file, path, name));
	if (path.length !== 3 || valueAt(file, path.slice(0, 2)) === undefined) return made;
	const [{ startsAt }, { firstThatFits }] = await Promise.all([
		import('./starts'),
		import('./try-out'),
	]);
	const all = startsAt(file, path, made);
	const [list, index] = path as [string, number];
	// Nothing else of the job is looked at: it would be worked out anew for each way.
	const alone = {
		...file,
		boxes: [],
		panels: [],
		parts: [],
		[list]: [listAt(file, [list])[index]],
	};
	const at = [list, 0, ...path.slice(2)];
	return firstThatFits(alone, all, (to, one) => insert(to, at, one, listAt(to, at).length));
}
