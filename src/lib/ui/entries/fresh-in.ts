import { type JobFile, type Path, valueAt } from '../../job';
import { insert, listAt } from '../state';
import { aboutAt } from './about';
import type { Entry } from './entry';
import { fresh } from './fresh';
import { startsAt } from './starts';

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
	const all = startsAt(file, path, made);
	if (all.length === 1 || valueAt(file, path.slice(0, 2)) === undefined) return made;
	const { firstThatFits } = await import('./try-out');
	const index = listAt(file, path).length;
	return firstThatFits(file, all, (to, one) => insert(to, path, one, index));
}
