import type { BoxSkin, SkinFace } from '../../../src/lib/design/covering';
import { circle, rectangle } from '../../../src/lib/geometry/shaping/tidy';
import { mm } from '../../../src/lib/measure/length';
import { outline } from '../make';

/**
 * A box 600 wide, 350 high, 400 deep at the bottom and 300 at the top, its back leaning; a driver
 * in the front.
 */
export function skin(changes: Partial<BoxSkin> = {}): BoxSkin {
	const lean = Math.hypot(100, 350);
	return {
		owner: 'bench',
		name: 'Bench box',
		across: mm(600),
		round: [
			face('front', 'Front', 350, [circle(mm(300), mm(175), mm(120))]),
			face('top', 'Top', 300),
			face('back', 'Back', lean),
			face('bottom', 'Bottom', 400),
		],
		ends: [
			{
				key: 'left',
				name: 'Left end',
				outline: outline([0, 0], [400, 0], [400, 350], [100, 350]),
				holes: [],
			},
			{
				key: 'right',
				name: 'Right end',
				outline: outline([0, 0], [400, 0], [300, 350], [0, 350]),
				holes: [],
			},
		],
		...changes,
	};
}

function face(key: string, name: string, high: number, holes: SkinFace['holes'] = []): SkinFace {
	return { key, name, outline: rectangle(0, 0, mm(600), mm(high)), holes };
}
