import { z } from '../job';
import type { BoardLayouts, Carpeting, ClothLayouts, CutWay, RollLayout } from '../layout';
import {
	fieldsOf,
	howMany,
	millimetres,
	listOf,
	oneOf,
	pure,
	rectOf,
	saying,
	xy,
	yesNo,
} from './units';
import type { MoneyField } from './amounts';

/* Where everything lies on its sheet or roll. */

type SheetLayout = BoardLayouts['answer']['layouts'][number];
type Cut = SheetLayout['cuts'][number];

const unplaced = listOf(
	z.strictObject({
		id: saying('part or blank'),
		count: howMany('how many'),
		why: saying('why it lies nowhere'),
	}),
	'what found no place',
);
const faults = listOf(
	z.strictObject({ where: z.string(), what: z.string() }),
	'what the audit found; such a layout is never printed',
);
const placed = rectOf('a piece as it lies, from the lower left', {
	id: saying('part or blank'),
	copy: howMany('which of its count, from 0'),
	turn: pure('degrees counter-clockwise: 0, 90, 180 or 270'),
});
const gives = rectOf('what falls', {
	kind: oneOf(['piece', 'strip', 'offcut', 'waste', 'nothing'], 'what it is'),
	id: saying('of the piece').optional(),
	nextCut: howMany('number of the cut that takes a strip up again').optional(),
});
const cut = fieldsOf<Cut>()({
	n: howMany('order at the saw, from 1'),
	kind: oneOf(['trim', 'rip', 'cross', 'slant'], 'kind of cut'),
	runs: oneOf(['x', 'y'], 'along which axis'),
	region: rectOf('what is on the saw before'),
	at: millimetres('where the kerf begins'),
	fence: millimetres('setting, from the fence to the blade'),
	fenceEdge: oneOf(['left', 'right', 'bottom', 'top'], 'edge along the fence'),
	gives: z.tuple([gives, gives]).describe('lower or left first'),
	from: xy.optional().describe('where a slant begins'),
	to: xy.optional().describe('where a slant ends'),
});
const source = fieldsOf<BoardLayouts['sources'][number]>()({
	kind: oneOf(['offcut', 'owned', 'buy'], 'where the sheet comes from'),
	id: saying('sheet or offcut of the rack'),
	name: saying('its size, or the label of the offcut'),
	pinned: yesNo('kept as it is'),
	cut: yesNo('cut already'),
	byHand: howMany('number its parts laid by hand go by').nullable(),
	spoiled: listOf(howMany('place among its pieces, from 0'), 'pieces of it that were spoiled'),
	misfit: listOf(howMany('place among its pieces, from 0'), 'those that fit the design no more'),
});

export const boardsFields = (amount: MoneyField) =>
	z.strictObject({
		material: saying('board'),
		method: oneOf(['saw', 'router'], 'cut by'),
		layouts: listOf(
			z.strictObject({
				sheet: saying('kind of sheet'),
				copy: howMany('which of the kind, from 0'),
				length: millimetres('of the sheet'),
				width: millimetres('of the sheet'),
				pieces: listOf(placed, 'where parts lie'),
				cuts: listOf(cut, 'cuts in order; none for a router'),
				offcuts: listOf(rectOf('an offcut'), 'back to the rack'),
				from: source,
			}),
			'sheets',
		),
		unplaced,
		cost: amount('sheets to buy'),
		bound: z
			.strictObject({ sheets: howMany('sheets'), cost: amount('money') })
			.describe('less no layout cut in this way can do with'),
		proven: yesNo('is it shown that none is cheaper'),
		effort: pure('work units spent'),
		faults,
		refused: listOf(
			z.strictObject({
				place: howMany('place among those laid by hand, from 0'),
				what: saying('why it is not kept'),
			}),
			'places laid by hand that are not kept',
		),
	});

export function boardsFile(boards: BoardLayouts) {
	const { material, problem, answer, sources, faults, refused } = boards;
	const { layouts, ...rest } = answer;
	return {
		...{ material, method: problem.method, ...rest, faults, refused },
		layouts: layouts.map(({ placed: pieces, cuts, ...layout }, i) => ({
			...{ ...layout, pieces, from: sources[i] },
			cuts: cuts.map((c) => ({
				...c,
				gives: c.gives.map(({ rect, ...what }) => ({ ...what, ...rect })),
			})),
		})),
	};
}

export const clothFields = (amount: MoneyField) =>
	z.strictObject({
		cloth: saying('cloth'),
		rolls: listOf(
			z.strictObject({
				roll: saying('roll of the rack'),
				pull: millimetres('to pull, in the steps it is sold in'),
				lead: millimetres('of the pull that may go by before the pattern starts').optional(),
				pattern: fieldsOf<NonNullable<RollLayout['pattern']>>()({
					cuts: oneOf(['counted', 'whole'], 'is every cut made of whole repeats'),
					begins: oneOf(['anywhere', 'pattern'], 'where in its pattern the roll begins'),
					other: millimetres('to pull if it were cut the other way'),
				}).optional(),
				napless: millimetres('it would take if the nap were ignored'),
				owned: yesNo('is it on the rack'),
				along: millimetres('to be cut along outlines; absent where none is').optional(),
				pulled: fieldsOf<NonNullable<RollLayout['pulled']>>()({
					lot: saying('the dye lot; empty when none was entered'),
					spoiled: listOf(howMany('place among its pieces, from 0'), 'blanks that were spoiled'),
				})
					.optional()
					.describe('present once it is pulled and booked'),
				length: millimetres('used'),
				bound: millimetres('less no layout can do with'),
				proven: yesNo('is it shown that none is shorter'),
				effort: pure('work units spent'),
				pieces: listOf(placed, 'where blanks lie'),
				unplaced,
				faults,
			}),
			'rolls',
		),
		ways: listOf(
			fieldsOf<CutWay>()({
				by: oneOf(['rectangle', 'outline'], 'blanks cut as rectangles or along their outlines'),
				pull: millimetres('to pull, all rolls together'),
				cost: amount('for what is bought, and the worth of what comes off the rack'),
				along: millimetres('to be cut along outlines'),
				cutCost: amount('the work of that'),
				fits: yesNo('does it go on the rolls there are'),
			}),
			'ways to cut the blanks, the one taken first',
		)
			.optional()
			.describe('present where both ways were looked at'),
		unplaced,
	});

export function clothFile({ cloth, rolls, ways, unplaced }: ClothLayouts) {
	return {
		...{ cloth, unplaced, ...(ways ? { ways } : {}) },
		rolls: rolls.map(({ problem: _, answer, ...roll }) => {
			const { placed: pieces, ...laid } = answer;
			return { ...roll, ...laid, pieces };
		}),
	};
}

export const carpetFields = (amount: MoneyField) =>
	fieldsOf<Carpeting>()({
		owner: saying('box'),
		ways: listOf(
			fieldsOf<Carpeting['ways'][number]>()({
				way: saying('band or faces'),
				blanks: howMany('blanks'),
				seams: howMany('seams'),
				seamLength: millimetres('all seams of one box'),
				pulls: listOf(
					fieldsOf<Carpeting['ways'][number]['pulls'][number]>()({
						cloth: saying('cloth'),
						length: millimetres('to pull for all boxes of the kind'),
						cost: amount('for all of it'),
						fits: yesNo('does it go on the rolls there are'),
					}),
					'cloth by cloth',
				),
				cost: amount('cloth for all of them'),
				seamCost: amount('the work of the seams of all of them'),
				fits: yesNo('does it go on the rolls there are'),
			}),
			'each way, priced',
		),
		chosen: saying('the way taken'),
	});
