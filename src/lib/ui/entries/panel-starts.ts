import type { Rect } from '../../geometry';

/*
 * What a new thing starts with on a panel: where nothing stands yet, else round what stands there.
 * Lengths in mm, as a file has them.
 */

/** A new thing as its schema alone would have it. */
export type Made = Readonly<Record<string, unknown>>;

export interface PanelRoom extends Rect {
	/** What stands on it or goes through it already. */
	readonly taken: readonly Rect[];
}

/** Shares of the panel: of its length and width, and of where the middle lies. */
type Spot = readonly [length: number, width: number, x: number, y: number];

const MIDDLE: Spot = [0.5, 0.5, 0.5, 0.5];
const ACROSS = [0.5, 0.25, 0.75, 0.16, 0.84, 0.1, 0.9] as const;
const everywhere = (size: number): Spot[] =>
	ACROSS.flatMap((x) => ACROSS.map((y): Spot => [size, size, x, y]));
/** Beside what takes the middle. */
const STRIPS: readonly Spot[] = [0.125, 0.875].flatMap((off): Spot[] => [
	[0.18, 0.5, off, 0.5],
	[0.5, 0.18, 0.5, off],
]);
const SPOTS: readonly Spot[] = [
	...[0.5, 0.4, 0.3].flatMap(everywhere),
	...STRIPS,
	...[0.2, 0.14, 0.1, 0.06].flatMap(everywhere),
];
/** Round one that stands in the middle, or within it. */
const ROUND: readonly Spot[] = [0.7, 0.36, 0.3].map((size) => [size, size, 0.5, 0.5]);

interface Ledge {
	readonly inside: number;
	readonly outside: number;
}
/** The usual one first, which a file leaves out; then for a board too small for it. */
const USUAL: Ledge = { inside: 15, outside: 25 };
const LEDGES = [USUAL, { inside: 10, outside: 12 }, { inside: 6, outside: 6 }] as const;

export function inPanel(list: string, made: Made, room: PanelRoom): [unknown, ...unknown[]] {
	if (list === 'hinges') return [folded(made, room), made];
	const middle = startAt(list, made, placed(MIDDLE, room));
	const ledges = list === 'covers' ? LEDGES : [null];
	const all = ledges.flatMap((ledge) =>
		[...SPOTS, ...ROUND].flatMap((spot) => {
			const rect = placed(spot, room);
			const goes =
				(ROUND.includes(spot) || room.taken.every((r) => isApart(r, rect))) &&
				edgeOf(room, rect) >= AT_EDGE &&
				(ledge === null || holdsLedge(room, rect, ledge));
			if (!goes) return [];
			const one = withLedge(startAt(list, made, rect), ledge);
			return list === 'layers' ? [one, { ...(one as object), covering: 'own' }] : [one];
		}),
	);
	const [first = middle, ...others] = all;
	return [first, ...others];
}

const round = (n: number): number => Math.max(1, Math.round(n));

function placed([length, width, x, y]: Spot, room: PanelRoom): Rect {
	const [l, w] = [round(room.length * length), round(room.width * width)];
	const left = Math.round(room.x + room.length * x - l / 2);
	const low = Math.round(room.y + room.width * y - w / 2);
	return { x: left, y: low, length: l, width: w };
}

/** Room between two things: cloth in the joint, and a little to see that they are two. */
const BETWEEN = 5;

function isApart(taken: Rect, { x, y, length, width }: Rect): boolean {
	return (
		taken.x + taken.length + BETWEEN <= x ||
		x + length + BETWEEN <= taken.x ||
		taken.y + taken.width + BETWEEN <= y ||
		y + width + BETWEEN <= taken.y
	);
}

/** Carpet gives enough for a corner as round as this at one board's step. */
const ROUNDING = 60;

/** Gap and cloth at the panel's own edge. */
const AT_EDGE = 4;

/** From the nearest edge of the panel. */
function edgeOf(room: PanelRoom, { x, y, length, width }: Rect): number {
	const across = Math.min(x - room.x, room.x + room.length - x - length);
	return Math.min(across, y - room.y, room.y + room.width - y - width);
}

function startAt(list: string, made: Made, { x, y, length, width }: Rect): unknown {
	if (list === 'devices') return { ...made, length, width, x, y };
	const corners = { radius: round(Math.min(ROUNDING, 0.4 * Math.min(length, width))) };
	const shape = { kind: 'rectangle', length, width, corners };
	return 'outline' in made ? { ...made, outline: { shape, x, y } } : made;
}

/** Its magnets go into what rests on the ledge, with board left beside them. */
function withLedge(cover: unknown, ledge: Ledge | null): unknown {
	if (ledge === null) return cover;
	const own = cover as { readonly ledge?: object };
	const lift = { by: 'magnets', diameter: Math.max(2, ledge.inside - 7) };
	if (ledge === USUAL) return { ...own, lift };
	return { ...own, ledge: { ...own.ledge, ...ledge }, lift };
}

/** Gap and cloth, at the panel's own edge and at the cover's. */
const GAPS = 10;

/** May a ledge be glued behind all round, with board left in the middle of it? */
function holdsLedge(room: PanelRoom, r: Rect, { inside, outside }: Ledge): boolean {
	const least = 2 * inside + GAPS;
	return edgeOf(room, r) >= outside + GAPS && Math.min(r.length, r.width) > least;
}

function folded(made: Made, room: PanelRoom): unknown {
	const x = Math.round(room.x + room.length / 2);
	const [low, high] = [Math.round(room.y), Math.round(room.y + room.width)];
	return { ...made, from: { x, y: low }, to: { x, y: high } };
}
