import type { PanelDetail } from '../figures';
import { listed } from '../../shape';

/** The order of assembly in words: glue up, groove, wrap, set in, fit. */
export function panelAssembly(f: Omit<PanelDetail, 'assembly'>): string[] {
	const names = (pick: (l: PanelDetail['layers'][number]) => boolean): string[] =>
		f.layers.filter(pick).map((l) => l.name);
	const floors = names((l) => l.place === 'recessed' && l.piece !== null && l.covering === 'with');
	const onTop = names((l) => l.place === 'raised' && l.covering === 'with');
	const wrapped = names((l) => l.covering === 'own' && l.place === 'raised');
	const later = names((l) => l.covering !== 'with' && l.place === 'recessed' && l.piece !== null);
	const strips = names((l) => l.covering === 'bare' && l.place === 'raised');
	const foam = [...(f.foam > 0 ? ['the face'] : []), ...names((l) => l.foam > 0)];
	return [
		...line(floors, 'Glue the floor of', 'behind the board.'),
		...line(
			f.covers.map((c) => c.name),
			'Glue the ledge of',
			'behind the board.',
		),
		...line(onTop, 'Glue on', onTop.length > 1 ? 'in this order.' : '.'),
		...(f.groove ? ['Rout the knife groove in the back.'] : []),
		...line(f.cloth ? foam : [], 'Lay the foam on', '.'),
		...(f.hinges.length > 0 && f.cloth
			? ['Lay the leaves face up, the gap between them, before the cloth goes on.']
			: []),
		...(f.cloth && f.cornerPatches
			? ['Glue the corner patches the cloth page shows into the inside corners.']
			: []),
		...(f.cloth ? ['Wrap the panel; press the cloth into the inside corners first.'] : []),
		...(f.groove ? ['Trim the turned cloth with a knife run along the groove.'] : []),
		...line(wrapped, 'Wrap by itself and set in', '.'),
		...line(later, 'Cover the floor of', 'and fix it behind the wrapped panel.'),
		...line(strips, 'Set in bare', '.'),
		...line(
			f.covers.map((c) => c.name),
			'Wrap and fit',
			'; check that the gap is even.',
		),
		...(f.fixings ? [`Fit ${f.fixings.at.length} ${f.fixings.kind}.`] : []),
	];
}

function line(names: readonly string[], before: string, after: string): string[] {
	if (names.length === 0) return [];
	const gap = /^[.;]/.test(after) ? '' : ' ';
	return [`${before} ${listed(names)}${gap}${after}`];
}
