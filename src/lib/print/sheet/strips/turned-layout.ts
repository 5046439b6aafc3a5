import { type Rect, rectHolds } from '../../../geometry';
import { nth, ticks } from '../../../measure';
import type { Cut, Gives, Placed, SheetLayout } from '../../../nest';

/** A rectangle of a sheet with what lies on it, in a frame of its own. */
export interface StripLayout extends SheetLayout {
	/** The edge of the sheet that each side of the picture lies to. */
	readonly sides: Sides;
	/** Is the picture turned a quarter from how it lies on the sheet? */
	readonly turned: boolean;
	/** Which offcuts of the sheet those here are. */
	readonly offcutNumbers: readonly number[];
	/** A rectangle of the sheet, here. */
	rect(r: Rect): Rect;
}

type Side = Cut['fenceEdge'];
type Sides = Readonly<Record<'left' | 'top', Side>>;

const AS_IT_LIES: Sides = { left: 'left', top: 'top' };
const TURNED: Sides = { left: 'bottom', top: 'left' };

/**
 * What lies in one rectangle of a sheet, its corner at 0,0: as it lies on the sheet, or, where it
 * is higher than wide, turned a quarter to the right, so that it lies along the page as it does
 * along the saw.
 */
export function stripLayout(
	layout: SheetLayout,
	region: Rect,
	kerf: number,
	lies: 'as it lies' | 'along the page' = 'along the page',
): StripLayout {
	const turned = lies === 'along the page' && region.width > region.length;
	const put = turned ? quarter(region, kerf) : shift(region);
	const within = (r: Rect): boolean => rectHolds(region, r);
	return {
		...layout,
		length: ticks(turned ? region.width : region.length),
		width: ticks(turned ? region.length : region.width),
		placed: layout.placed.filter(within).map((p) => ({ ...put.rect(p), ...put.turn(p) })),
		cuts: layout.cuts.filter((c) => within(c.region)).map((c) => put.cut(c)),
		offcuts: layout.offcuts.filter(within).map((r) => put.rect(r)),
		offcutNumbers: [...layout.offcuts.keys()].filter((i) => within(nth(layout.offcuts, i))),
		turned,
		rect: (r) => put.rect(r),
		sides: turned ? TURNED : AS_IT_LIES,
	};
}

interface Put {
	rect(r: Rect): Rect;
	turn(p: Placed): Omit<Placed, keyof Rect>;
	cut(c: Cut): Cut;
}

function shift({ x, y }: Rect): Put {
	const rect = (r: Rect): Rect => ({ x: r.x - x, y: r.y - y, length: r.length, width: r.width });
	const spot = (p: { x: number; y: number }) => ({ x: p.x - x, y: p.y - y });
	return {
		rect,
		turn: ({ id, copy, turn }) => ({ id, copy, turn }),
		cut: (c) => ({
			...c,
			region: rect(c.region),
			at: ticks(c.runs === 'x' ? c.at - y : c.at - x),
			gives: both(c.gives, rect),
			...ends(c, spot),
		}),
	};
}

/** A quarter turn to the right: the left edge comes to lie at the top. */
function quarter(region: Rect, kerf: number): Put {
	const { x, y, length } = region;
	const right = x + length;
	const rect = (r: Rect): Rect => ({
		x: r.y - y,
		y: right - r.x - r.length,
		length: r.width,
		width: r.length,
	});
	const spot = (p: { x: number; y: number }) => ({ x: p.y - y, y: right - p.x });
	return {
		rect,
		turn: ({ id, copy, turn }) => ({ id, copy, turn: ((turn + 270) % 360) as Placed['turn'] }),
		cut: (c) => {
			const gives = both(c.gives, rect);
			const swapped = c.runs === 'y' && c.kind !== 'slant';
			return {
				...c,
				runs: c.runs === 'x' ? 'y' : 'x',
				region: rect(c.region),
				at: ticks(c.runs === 'x' ? c.at - y : right - c.at - kerf),
				gives: swapped ? [gives[1], gives[0]] : gives,
				...ends(c, spot),
			};
		},
	};
}

function both(gives: Cut['gives'], rect: (r: Rect) => Rect): Cut['gives'] {
	const one = (g: Gives): Gives => ({ ...g, rect: rect(g.rect) });
	return [one(gives[0]), one(gives[1])];
}

function ends(c: Cut, spot: (p: { x: number; y: number }) => { x: number; y: number }) {
	return {
		...(c.from === undefined ? {} : { from: spot(c.from) }),
		...(c.to === undefined ? {} : { to: spot(c.to) }),
	};
}
