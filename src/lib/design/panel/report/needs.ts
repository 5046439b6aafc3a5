import { mm } from '../../../measure';
import { area, type Outline } from '../../../geometry';
import type { Need } from '../../need';
import type { Bench } from '../bench';
import type { PanelDetail } from '../figures';
import { foamedOf } from '../layers';

const SQUARE_METRE = mm(1000) ** 2;

/**
 * Glue between boards, foam, fixings and magnets of all panels alike. Cloth adhesive is counted
 * with the blanks.
 */
export function needsOf(bench: Bench, f: Omit<PanelDetail, 'assembly'>): Need[] {
	const { panel } = bench;
	const times = panel.count * (f.both ? 2 : 1);
	const need = (kind: Need['kind'], each: number, what: string): Need[] =>
		each > 0 ? [{ kind, amount: each * times, for: `${what} of ${panel.name}` }] : [];
	const magnets = f.covers.reduce((sum, c) => sum + c.magnets.length, 0);
	return [
		...need('wood-glue', glued(f) / SQUARE_METRE, 'layers and ledges'),
		...need('foam', foamed(bench, f) / SQUARE_METRE, 'foam'),
		...need('damping', (size(f.fit.board) / SQUARE_METRE) * (panel.damping / 100), 'damping sheet'),
		...need(f.fixings?.kind ?? 'clips', f.fixings?.at.length ?? 0, 'fixings'),
		...need('magnets', magnets, 'covers'),
	];
}

const size = (o: Outline | null): number => (o ? Math.abs(area(o)) : 0);

/**
 * Bonded face between boards: a raised piece all over, a floor and a ledge where they lap behind
 * the board.
 */
function glued(f: Omit<PanelDetail, 'assembly'>): number {
	const layers = f.layers.reduce(
		(sum, l) => sum + size(l.piece) - (l.place === 'recessed' && l.piece ? size(l.hole) : 0),
		0,
	);
	return layers + f.covers.reduce((sum, c) => sum + size(c.ledge.outer) - size(c.hole), 0);
}

function foamed(bench: Bench, f: Omit<PanelDetail, 'assembly'>): number {
	const face = bench.panel.foam ? size(f.fit.board) : 0;
	return f.layers.reduce((sum, l) => (l.foam > 0 ? sum + size(foamedOf(l)) : sum), face);
}
