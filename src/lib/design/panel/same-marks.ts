import type { Panel } from '../../job';
import type { Bench } from './bench';

const LISTS = ['windows', 'layers', 'covers', 'hinges', 'rings', 'zones', 'devices'] as const;

/** Things of one panel that share a mark: both are made, and nobody could tell which is meant. */
export function checkMarks({ panel, log }: Bench): void {
	for (const list of LISTS) {
		const first = new Map<string, string>();
		panel[list].forEach((thing, i) => {
			const name = 'name' in thing ? thing.name : `Fold line ${i + 1}`;
			const before = first.get(thing.id);
			if (before === undefined) first.set(thing.id, name);
			else
				log.check(
					[list, i, 'id'],
					`${name} has the mark "${thing.id}", which ${before} has already.`,
					'Give each of them a mark of its own.',
				);
		});
	}
}

/**
 * The panel with a mark of its own for each thing: whatever is made of a thing goes by its mark,
 * and two parts under one would be one part to the saw. A later thing of the same mark is numbered,
 * and so is a layer whose mark a piece of the panel has of itself.
 */
export function withOwnMarks(panel: Panel): Panel {
	const lists = LISTS.map((list) => {
		const taken = list === 'layers' ? ofItself(panel) : new Set<string>();
		return [list, numbered<{ readonly id: string }>(panel[list], taken)] as const;
	});
	const own = { ...panel, ...Object.fromEntries(lists) };
	const names = panel.layers.map(({ id }, i): [string, string] => [id, own.layers[i]?.id ?? id]);
	// What lies on a mark that two have lies on the first of them.
	const now = new Map(names.toReversed());
	const layers = own.layers.map((l) => ({
		...l,
		on: l.on === null ? null : (now.get(l.on) ?? l.on),
	}));
	return { ...own, layers };
}

/** Marks that pieces have which are no layers: boards, covers, ledges, rings. */
function ofItself({ hinges, covers, rings }: Panel): Set<string> {
	return new Set([
		'board',
		...hinges.flatMap((_, i) => [`board-${i + 1}`, `board-${i + 2}`]),
		...covers.flatMap(({ id }) => [`cover-${id}`, `ledge-${id}`]),
		...rings.map(({ id }) => `ring-${id}`),
	]);
}

function numbered<T extends { readonly id: string }>(
	things: readonly T[],
	taken: Set<string>,
): T[] {
	const asked = new Set(things.map(({ id }) => id));
	return things.map((thing) => {
		let { id } = thing;
		for (let n = 2; taken.has(id); n++) {
			const next = `${thing.id}-${n}`;
			if (!asked.has(next)) id = next;
		}
		taken.add(id);
		return { ...thing, id };
	});
}
