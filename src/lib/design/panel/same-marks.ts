import type { Panel } from '../../job';
import type { Bench } from './bench';

const LISTS = ['windows', 'layers', 'covers', 'hinges', 'rings', 'zones', 'devices'] as const;

/** Things of one panel that share a mark: both are made, and nobody could tell which is meant. */
export function checkMarks({ panel, log }: Bench, asked: Panel): void {
	for (const list of LISTS) {
		const first = new Map<string, string>();
		panel[list].forEach((thing, i) => {
			const name = 'name' in thing ? thing.name : `Fold line ${i + 1}`;
			const mark = asked[list][i]?.id ?? thing.id;
			const before = first.get(mark);
			if (before === undefined) first.set(mark, name);
			else
				log.check(
					[list, i, 'id'],
					`${name} has the mark "${mark}", which ${before} has already.`,
					'Give each of them a mark of its own.',
				);
		});
	}
}

/**
 * The panel with a mark of its own for everything on it: of two with one mark the later gets
 * another, or their boards and blanks would be taken for copies of one.
 */
export function withOwnMarks(panel: Panel): Panel {
	const lists = LISTS.map((list) => [list, apart<{ readonly id: string }>(panel[list])] as const);
	return { ...panel, ...Object.fromEntries(lists) };
}

function apart<T extends { readonly id: string }>(things: readonly T[]): T[] {
	const asked = new Set(things.map(({ id }) => id));
	const taken = new Set<string>();
	return things.map((thing) => {
		let { id } = thing;
		for (let n = 2; taken.has(id) || (id !== thing.id && asked.has(id)); n++)
			id = `${thing.id}-${n}`;
		taken.add(id);
		return { ...thing, id };
	});
}
