import fc from 'fast-check';
import type { JobFile } from '../../../src/lib/job/job';

/* Random panels of which the second way knows what cloth they take. mm. */

const mm = (low: number, high: number): fc.Arbitrary<number> =>
	fc.integer({ min: low * 10, max: high * 10 }).map((n) => n / 10);
const coarse = (low: number, high: number): fc.Arbitrary<number> =>
	fc.integer({ min: low, max: high });

/** Measured thickness of the boards on the rack, and of its cloths pressed. */
export const BOARDS = { thin: 9.2, board: 12.1, thick: 18 } as const;
export type Board = keyof typeof BOARDS;
export const CLOTHS = { plain: 2.6, striped: 1.4, checked: 3.5 } as const;
export type ClothMark = keyof typeof CLOTHS;

export const STOCK: JobFile['stock'] = {
	materials: Object.entries(BOARDS).map(([id, measured]) => ({
		id,
		name: id,
		nominal: measured,
		measured,
		kind: 'mdf',
	})),
	sheets: Object.keys(BOARDS).map((id) => ({
		id: `sheet-${id}`,
		material: id,
		length: 3000,
		width: 1500,
		price: 50,
	})),
	cloths: [
		{ id: 'plain', name: 'Plain', loose: 4, pressed: CLOTHS.plain, nap: 'one-way' },
		{ id: 'striped', name: 'Striped', loose: 2, pressed: CLOTHS.striped, repeat: 64 },
		{
			id: 'checked',
			name: 'Checked',
			loose: 5,
			pressed: CLOTHS.checked,
			nap: 'two-way',
			repeat: 50,
			repeatAcross: 45,
			halfDrop: true,
		},
	],
	rolls: Object.keys(CLOTHS).map((cloth) => ({
		id: `roll-${cloth}`,
		cloth,
		width: 2600,
		usable: 2600,
		price: 10,
	})),
};

const board = fc.constantFrom<Board>('thin', 'board', 'thick');
const cloth = fc.constantFrom<ClothMark>('plain', 'striped', 'checked');

/** How the panel ends at one of its sides. */
const side = fc.record({
	end: fc.constantFrom('wrapped', 'wrapped', 'bare', 'tucked'),
	clearance: mm(0, 3),
	beside: fc.constantFrom('fixed', 'panel', 'unwrapped'),
	neighbour: fc.option(cloth),
	tuck: mm(5, 20),
});
export type SideWish = typeof side extends fc.Arbitrary<infer T> ? T : never;

const layer = fc.record({
	place: fc.constantFrom('raised' as const, 'raised' as const, 'recessed' as const),
	covering: fc.constantFrom('with' as const, 'with' as const, 'own' as const),
	board,
	cloth: fc.option(cloth),
	foam: fc.option(coarse(2, 6)),
	sink: fc.constantFrom(0, 0, 4),
	clearance: mm(0, 2),
	/** Flush with the left edge of the board, where it stands at the left. */
	flush: fc.boolean(),
	/** Where up the panel its middle lies, and how far it reaches below and above that. */
	at: fc.constantFrom(0.35, 0.5, 0.6),
	low: coarse(30, 90),
	high: coarse(30, 90),
});
export type LayerWish = typeof layer extends fc.Arbitrary<infer T> ? T : never;

const opening = fc.record({
	form: fc.constantFrom('plain' as const, 'rounded' as const, 'trapezoid' as const, 'L' as const),
	length: coarse(600, 1000),
	width: coarse(420, 700),
	/** Of a rounded corner; or of the inside corner of an L, 0 for a sharp one. */
	radius: coarse(20, 60),
	shift: coarse(-40, 120),
	/** What the upper right of an L lacks. */
	notch: fc.record({ x: coarse(180, 260), y: coarse(160, 200) }),
});

export const panelWish = fc.record({
	opening,
	board: fc.constantFrom<Board>('board', 'thick'),
	cloth,
	foam: fc.option(coarse(2, 8)),
	groove: fc.option(fc.record({ offset: mm(6, 14), depth: mm(2, 5) })),
	margin: coarse(25, 60),
	grip: coarse(0, 20),
	sides: fc.array(side, { minLength: 4, maxLength: 4 }),
	nap: fc.constantFrom(-90, 0, 90, 180),
	count: coarse(1, 3),
	window: fc.option(
		fc.record({
			wrapped: fc.boolean(),
			clearance: mm(0, 2),
			thing: fc.option(cloth),
			length: coarse(100, 150),
			width: coarse(100, 200),
		}),
	),
	left: fc.option(layer),
	right: fc.option(layer),
	cover: fc.option(fc.record({ gap: mm(0.5, 3), cloth: fc.option(cloth) })),
	ring: fc.option(fc.record({ board, cloth, lap: coarse(20, 40), lip: coarse(0, 5) })),
	patches: fc.boolean(),
});
export type PanelWish = typeof panelWish extends fc.Arbitrary<infer T> ? T : never;

const NOTHING = { left: null, right: null, window: null, cover: null, ring: null };

/** Only a rectangle has layers and one thing in its middle here; round corners are wrapped. */
export function plainly(w: PanelWish): PanelWish {
	const { form } = w.opening;
	if (form === 'plain')
		return { ...w, cover: w.window ? null : w.cover, ring: w.window || w.cover ? null : w.ring };
	if (form === 'trapezoid') return { ...w, ...NOTHING };
	const wrapped: SideWish = { ...w.sides[0]!, end: 'wrapped' };
	return { ...w, ...NOTHING, sides: [wrapped, wrapped, wrapped, wrapped] };
}

/** Panels of one form. */
export const panelsOf = (form: PanelWish['opening']['form']): fc.Arbitrary<PanelWish> =>
	panelWish.map((w) => plainly({ ...w, opening: { ...w.opening, form } }));
