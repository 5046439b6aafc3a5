import type { Path, JobFile } from '../../job';
import { listAt } from '../state';
import type { About } from './fresh';

/** Singular of the lists whose things carry marks. */
const STEMS: Readonly<Record<string, string>> = {
	boxes: 'box',
	panels: 'panel',
	parts: 'part',
	materials: 'board',
	sheets: 'sheet',
	offcuts: 'offcut',
	cloths: 'cloth',
	rolls: 'roll',
	sundries: 'sundry',
	runs: 'run',
	stretches: 'stretch',
	suppliers: 'supplier',
	breaks: 'price break',
	saws: 'saw',
	windows: 'window',
	layers: 'layer',
	covers: 'cover',
	hinges: 'fold',
	devices: 'device',
	rings: 'ring',
	zones: 'zone',
};

export function stemOf(list: string): string {
	return STEMS[list] ?? 'item';
}

/** What a new thing in the list at `path` may refer to: the first of each thing on the rack. */
export function aboutAt(file: JobFile, path: Path, list: string): About {
	const first = (from: Path): string => marks(file, from)[0] ?? '';
	return {
		material: boxMaterial(file, path) || first(['stock', 'materials']),
		cloth: first(['stock', 'cloths']),
		saw: first(['shop', 'saws']),
		supplier: first(['stock', 'suppliers']),
		taken: marks(file, path),
		stem: stemOf(list),
	};
}

/** A new board of a thing starts with the board the thing is made of. */
function boxMaterial(file: JobFile, path: Path): string {
	const [list, index] = path;
	if (typeof list !== 'string' || typeof index !== 'number') return '';
	const thing = listAt(file, [list])[index] as { material?: unknown } | undefined;
	return typeof thing?.material === 'string' ? thing.material : '';
}

function marks(file: JobFile, path: Path): string[] {
	return listAt(file, path).flatMap((thing) => {
		const { id } = (thing ?? {}) as { id?: unknown };
		return typeof id === 'string' ? [id] : [];
	});
}
