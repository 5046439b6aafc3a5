import type { Box, Path } from '../../../job';
import { braceName, type Inside } from '../inside';
import { framedName } from '../mounted';
import { tieDownName } from '../hold';
import { ventName } from '../vent';
import type { ProblemLog } from '../../problem-log';

/** Says which names in a box two things share, and which boards are named that its form lacks. */
export function sayNames(box: Box, inside: Inside, log: ProblemLog): void {
	sayShared(box, log);
	const walls = inside.boards.filter((b) => b.role === 'wall' || b.role === 'end');
	const keys = walls.map((b) => b.key);
	const sayLost = (key: string, path: Path): void => {
		if (keys.includes(key)) return;
		log.check(
			path,
			`This form has no board '${key}': what is asked of it is not used.`,
			`Name one of ${keys.join(', ')}.`,
		);
	};
	for (const key of Object.keys(box.boards)) sayLost(key, ['boards', key]);
	box.lining?.boards.forEach((key, i) => sayLost(key, ['lining', 'boards', i]));
}

/** The later of two things under one name: on a drawing nobody could tell them apart. */
function sayShared(box: Box, log: ProblemLog): void {
	const named = [
		...(['drivers', 'radiators'] as const).flatMap((list) =>
			box[list].map((d, i) => ({ name: framedName(list, d.name, i), path: [list, i] })),
		),
		...box.vents.map((v, i) => ({ name: ventName(v, i), path: ['vents', i] })),
		...box.tieDowns.map((t, i) => ({ name: tieDownName(t, i), path: ['tieDowns', i] })),
		...box.devices.map((d, i) => ({ name: d.name, path: ['devices', i] })),
		...box.braces.map((b, i) => ({ name: braceName(b, i), path: ['braces', i] })),
	];
	const seen = new Set<string>();
	for (const { name, path } of named) {
		if (seen.has(name)) {
			log.check(
				[...path, 'name'],
				`'${name}' is the name of two things in this box.`,
				'Give each a name of its own, so that the drawings tell them apart.',
			);
		}
		seen.add(name);
	}
}
