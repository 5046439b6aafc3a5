import type { ClothEdge, Covering } from '../../src/lib/design/covering';
import type { Outline } from '../../src/lib/geometry/outline';
import { cloth as clothField, type Cloth } from '../../src/lib/job/stock/stock';
import { mm, toMm } from '../../src/lib/measure/length';
import type { Blank } from '../../src/lib/wrap/blank';
import type { WrapShop } from '../../src/lib/wrap/shop';

/** An edge 18 mm high with a knife groove: turn-under 18 + 12 + 5 + 15 = 50 mm. */
export const GROOVED: ClothEdge = {
	kind: 'wrapped',
	build: mm(18),
	groove: { offset: mm(12), depth: mm(5) },
	margin: mm(40),
	grip: mm(15),
};
export const PLAIN: ClothEdge = { ...GROOVED, groove: null };
export const BARE: ClothEdge = { ...GROOVED, kind: 'bare' };

export const SHOP: WrapShop = {
	ruler: { unit: 'mm', fraction: 32, decimal: '.' },
	usable: null,
	overlap: mm(20),
};

export function carpet(changes: Partial<Record<keyof Cloth, unknown>> = {}): Cloth {
	return clothField.parse({ id: 'carpet', name: 'Grey carpet', loose: 4, pressed: 3, ...changes });
}

/**
 * A covering of a board, 600 x 300 mm unless told otherwise, nap along x so that nothing is turned.
 */
export function covering(changes: Partial<Covering> & { outline: Outline }): Covering {
	return {
		id: 'tray.face',
		label: 'C1',
		name: 'Tray face',
		owner: 'tray',
		covers: 'front',
		cloth: 'carpet',
		edges: changes.outline.map(() => GROOVED),
		steps: [],
		windows: [],
		nap: 0,
		anyWay: false,
		count: 1,
		lot: '',
		seams: [],
		...changes,
	};
}

/** Corners given in millimetres. */
export function outline(...corners: readonly (readonly [number, number, number?])[]): Outline {
	return corners.map(([x, y, bulge]) => ({ x: mm(x), y: mm(y), ...(bulge ? { bulge } : {}) }));
}

export function sizeOf(blank: Blank): [number, number] {
	return [toMm(blank.length), toMm(blank.width)];
}
