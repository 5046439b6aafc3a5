import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { made, type Asked } from '../design/box/make';
import { runs } from '../depth';
import { roomsOf, type Filling } from './air';
import { asked, ENDS, forms, measured, thickness, wallBoards } from './random-box';
import type { Form } from './section';

const POINTS = 40_000;
/**
 * By how much of the largest chamber a count of points may miss: points so spread miss a body with
 * smooth faces by about POINTS^(-2/3) of the room they fill, 0.09 %; twice that is allowed.
 */
const NEAR = 2 * POINTS ** (-2 / 3);

const board = fc.constantFrom('ply-18', 'mdf-12', 'mdf-25');
const share = (low: number, high: number): fc.Arbitrary<number> =>
	fc.double({ min: low, max: high, noNaN: true });
const tenths = (n: number): number => Math.round(n * 10) / 10;

const wish = fc.record({
	form: forms,
	boards: wallBoards,
	fit: fc.constantFrom(...ENDS),
	joint: fc.constantFrom('level-past' as const, 'upright-past' as const, 'mitre' as const),
	doubler: fc.option(board),
	divider: fc.option(board),
	frame: fc.option(
		fc.record({ board, rim: share(30, 60), windows: fc.integer({ min: 1, max: 3 }) }),
	),
	shelf: fc.option(board),
	rod: fc.option(share(12, 40)),
	cleats: fc.option(fc.record({ board, width: share(20, 45) })),
	driver: fc.option(fc.record({ diameter: share(90, 140), litres: share(0.2, 2) })),
	tube: fc.option(
		fc.record({ diameter: share(40, 80), wall: share(2, 6), length: share(90, 160) }),
	),
	slot: fc.option(fc.record({ board, gap: share(25, 50), length: share(120, 250) })),
});
type Wish = typeof wish extends fc.Arbitrary<infer T> ? T : never;

/**
 * Where everything goes so that nothing meets: the divider at 0.62 of the width, a frame at 0.14, a
 * shelf from 0.2 to 0.3, the rod at 0.35, the driver at 0.47, the tube at 0.8. A slot takes the
 * place of what stands on the floor.
 */
function filled(w: Wish): {
	job: Asked;
	filling: Filling;
	inside: { width: number; leftEnd: number };
} {
	const { form } = w;
	const thick = thickness(w.boards);
	const ends = w.fit === 'over' || w.fit === 'between' ? thick('left') + thick('right') : 0;
	const inside = { width: form.width - ends, leftEnd: thick('left') };
	const slot = form.kind === 'plain' ? w.slot : null;
	const place = (at: number): number => tenths(at * inside.width);
	const own = <T>(of: T | null): T | null => (slot ? null : of);
	const filling: Filling = {
		doubler: w.doubler && measured(w.doubler),
		divider: own(w.divider) && { at: place(0.62), thick: measured(w.divider!) },
		frame: own(w.frame) && {
			at: place(0.14),
			rim: tenths(w.frame!.rim),
			windows: form.kind === 'plain' ? w.frame!.windows : 1,
			thick: measured(w.frame!.board),
		},
		shelf: own(w.shelf) && {
			at: tenths(form.height * 0.6),
			from: place(0.2),
			length: place(0.1),
			thick: measured(w.shelf!),
		},
		rod: slot || w.rod === null ? null : { a: place(0.35), b: 100, diameter: tenths(w.rod) },
		cleats:
			form.kind === 'plain' && !w.rod && !w.frame
				? own(w.cleats) && {
						width: tenths(w.cleats!.width),
						thick: measured(w.cleats!.board),
					}
				: null,
		cutout: w.driver && {
			at: { x: place(0.47) + inside.leftEnd, y: tenths(form.height * 0.55) },
			diameter: tenths(w.driver.diameter),
			litres: w.driver.litres,
		},
		tube:
			form.kind === 'plain' && w.tube
				? {
						at: {
							x: tenths(form.width - inside.leftEnd - place(0.8)),
							y: tenths(form.height * 0.55),
						},
						diameter: tenths(w.tube.diameter),
						wall: tenths(w.tube.wall),
						length: tenths(w.tube.length),
					}
				: null,
		slot: slot && {
			gap: tenths(slot.gap),
			length: tenths(slot.length),
			thick: measured(slot.board),
		},
	};
	return { job: jobOf(w, filling), filling, inside };
}

function jobOf(w: Wish, f: Filling): Asked {
	const shell = asked(w.form, w.boards, w);
	return {
		...shell,
		doublers: w.doubler && f.doubler !== null ? [{ board: 'front', material: w.doubler }] : [],
		dividers: f.divider ? [{ across: 'width', at: f.divider.at, material: w.divider! }] : [],
		braces: [
			...(f.frame ? [frameOf(w, f.frame)] : []),
			...(f.shelf ? [shelfOf(w, f.shelf)] : []),
			...(f.rod ? [{ kind: 'dowel' as const, along: 'height' as const, ...f.rod }] : []),
		],
		cleats: f.cleats && {
			width: f.cleats.width,
			where: 'corners',
			material: w.cleats!.board,
		},
		drivers: f.cutout ? [driverOf(f.cutout)] : [],
		vents: [...(f.tube ? [tubeOf(f.tube)] : []), ...(f.slot ? [slotOf(w, f.slot)] : [])],
	};
}

type Given<K extends keyof Filling> = NonNullable<Filling[K]>;
type Brace = NonNullable<Asked['braces']>[number];
type Vent = NonNullable<Asked['vents']>[number];

const frameOf = (w: Wish, { at, rim, windows }: Given<'frame'>): Brace => ({
	kind: 'window',
	across: 'width',
	at,
	rim,
	windows,
	material: w.frame!.board,
});
const shelfOf = (w: Wish, { at, from, length }: Given<'shelf'>): Brace => ({
	kind: 'shelf',
	across: 'height',
	at,
	from,
	length,
	material: w.shelf!,
});
const driverOf = ({
	at,
	diameter,
	litres,
}: Given<'cutout'>): NonNullable<Asked['drivers']>[number] => ({
	at: { across: at.x, up: at.y },
	cutout: { kind: 'round', diameter },
	frame: diameter + 20,
	depth: 60,
	displacement: litres,
});
const tubeOf = ({ at, diameter, wall, length }: Given<'tube'>): Vent => ({
	kind: 'round',
	board: 'back',
	at: { across: at.x, up: at.y },
	diameter,
	wall,
	goal: { by: 'length', length },
});
const slotOf = (w: Wish, { gap, length }: Given<'slot'>): Vent => ({
	kind: 'slot',
	gap,
	material: w.slot!.board,
	goal: { by: 'length', length },
});

/** A driver astride a divider is told of; which chamber its hole belongs to nobody can say. */
const ASTRIDE = /runs into a wall/;

/** Figures of the plan; none for a box that cannot be made. */
function planned(job: Asked): { gross: number; net: number }[] | null {
	const { figures, problems } = made(job);
	const refused = problems.some((p) => p.kind === 'stop' || ASTRIDE.test(p.what));
	if (!figures || refused) return null;
	return figures.chambers.map(({ gross, net }) => ({ gross, net }));
}

describe('air of a box, counted by trying points', () => {
	it('is the gross and the net volume of each chamber', () => {
		let seen = 0;
		fc.assert(
			fc.property(wish, (w) => {
				const { job, filling, inside } = filled(w);
				const plan = planned(job);
				fc.pre(plan !== null);
				const counted = roomsOf(w.form, thickness(w.boards), inside, filling, POINTS);
				expect(plan.length).toBe(counted.length);
				plan.forEach((room, i) => {
					const other = counted[i]!;
					// A small chamber is met by few of the points.
					const near = NEAR * Math.max(...counted.map((c) => c.gross));
					expect(Math.abs(room.gross - other.gross), 'gross').toBeLessThan(near);
					expect(Math.abs(room.net - other.net), 'net').toBeLessThan(near);
				});
				seen++;
			}),
			{ numRuns: runs(120) },
		);
		expect(seen).toBeGreaterThan(20);
	});

	it('of a box of 600 x 400 x 300 in 18 mm by hand', () => {
		const form: Form = {
			kind: 'plain',
			width: 600,
			height: 400,
			depth: 300,
			top: 0,
			step: { x: 0, y: 0 },
		};
		const nothing = { doubler: null, divider: null, frame: null, shelf: null, rod: null };
		const empty: Filling = { ...nothing, cleats: null, cutout: null, tube: null, slot: null };
		const cutout = { at: { x: 300, y: 200 }, diameter: 100, litres: 1 };
		const inside = { width: 564, leftEnd: 18 };
		const [bare] = roomsOf(form, () => 18, inside, empty, POINTS);
		expect(bare?.gross).toBeCloseTo(5.64 * 3.64 * 2.64, 6);
		const filling = { ...empty, doubler: 18, cutout };
		const [room] = roomsOf(form, () => 18, inside, filling, POINTS);
		const wood = 5.64 * 3.64 * 0.18 - (Math.PI / 4) * 0.18;
		expect(Math.abs((room?.net ?? 0) - (5.64 * 3.64 * 2.64 - wood - 1))).toBeLessThan(NEAR * 54);
	});
});
