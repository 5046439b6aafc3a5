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
