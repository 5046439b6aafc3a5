import { valueAt, type Path } from '../../job';
import type { Entry } from './entry';

/**
 * What a field of a list's thing is while it says nothing itself, as the file holds it: the same
 * field of the thing beside the list, else what is usual. Undefined where nothing is inherited.
 */
export function inherited(file: unknown, path: Path, { inherits }: Entry): unknown {
	if (!inherits) return undefined;
	const key = path.at(-1) ?? '';
	// From the field up to its thing, to the list, to what holds the list.
	const said = valueAt(file, [...path.slice(0, -3), inherits.from, key]);
	return said === undefined ? inherits.usual : said;
}
