import fc from 'fast-check';
import type { Asked } from './make';

/*
 * Random boxes that can be built: forms, joints, ends and what stands inside, within what a
 * fabricator would try.
 */

const boards = fc.constantFrom('ply-18', 'ply-17', 'mdf-12', 'mdf-25');
const corner = fc.constantFrom(
	'bottom-back' as const,
	'bottom-front' as const,
	'top-back' as const,
	'top-front' as const,
);
const mm = (low: number, high: number): fc.Arbitrary<number> =>
	fc.integer({ min: low * 10, max: high * 10 }).map((n) => n / 10);

const plain = fc.record({
	kind: fc.constant('plain' as const),
	width: mm(250, 1200),
	height: mm(200, 600),
	depth: mm(200, 700),
});

const slanted = fc.record({
	kind: fc.constant('slanted' as const),
	width: mm(250, 1200),
	height: mm(220, 600),
	face: fc.constantFrom('front' as const, 'back' as const),
	lean: fc.oneof(
		fc.record({ by: fc.constant('depths' as const), bottom: mm(200, 600), top: mm(200, 600) }),
		fc.record({
			by: fc.constant('angle' as const),
			depth: mm(450, 700),
			at: fc.constant('bottom' as const),
			angle: fc.integer({ min: -30, max: 30 }),
		}),
	),
});

const stepped = fc.record({
	kind: fc.constant('stepped' as const),
	width: mm(250, 1200),
	height: mm(350, 600),
	depth: mm(350, 700),
	corner,
	stepHeight: mm(60, 220),
	stepDepth: mm(60, 220),
});

const truncated = fc.record({
	kind: fc.constant('truncated' as const),
	width: mm(250, 1200),
	height: mm(350, 600),
	depth: mm(350, 700),
	corner,
	cutHeight: mm(60, 200),
	cutDepth: mm(60, 200),
});

const free = fc
	.record({ width: mm(250, 1200), a: mm(20, 120), b: mm(20, 120), c: mm(300, 500), d: mm(20, 100) })
	.map(({ width, a, b, c, d }) => ({
		kind: 'free' as const,
		width,
		corners: [
			{ x: a, y: 0 },
			{ x: 400, y: 0 },
			{ x: 400 + b, y: 150 },
			{ x: 400 - d, y: c },
			{ x: 0, y: c },
			{ x: 0, y: b },
		],
	}));

const tapered = fc.record({
	kind: fc.constant('tapered' as const),
	front: fc.record({ width: mm(300, 900), height: mm(250, 600) }),
	back: fc.record({ width: mm(250, 900), height: mm(200, 600) }),
	depth: mm(300, 600),
	rise: fc.option(mm(0, 80)),
	shift: fc.option(mm(0, 80)),
});

const shell = fc.record({
	sizes: fc.constantFrom('outer' as const, 'inner' as const),
	joint: fc.constantFrom('level-past' as const, 'upright-past' as const, 'mitre' as const),
	fit: fc.constantFrom('over' as const, 'between' as const, 'rabbet' as const),
	rabbet: mm(3, 7.9),
	material: boards,
	front: boards,
	back: boards,
	left: boards,
	right: boards,
	top: boards,
});

const across = fc.constantFrom('width' as const, 'height' as const, 'depth' as const);

const filling = fc.record({
	doubler: fc.constantFrom(null, 'front', 'back', 'left', 'top'),
	divider: fc.option(fc.double({ min: 0.2, max: 0.8, noNaN: true })),
	brace: fc.option(fc.double({ min: 0.2, max: 0.8, noNaN: true })),
	rim: mm(30, 60),
	windows: fc.integer({ min: 1, max: 3 }),
	cleats: fc.option(fc.constantFrom('corners' as const, 'ends' as const, 'both' as const)),
	slot: fc.constantFrom(null, 'bottom', 'top', 'left', 'right'),
	bend: fc.constantFrom('straight' as const, 'L' as const, 'U' as const),
	gap: mm(20, 45),
	length: mm(60, 900),
	across,
});

/** The walls alone. */
export const emptyBox: fc.Arbitrary<Asked> = fc
	.tuple(fc.oneof(plain, slanted, stepped, truncated, free, tapered), shell)
	.map(([shape, s]) => shellAsked(shape, s));

type ShellOf = typeof shell extends fc.Arbitrary<infer T> ? T : never;

function shellAsked(shape: Asked['shape'], s: ShellOf): Asked {
	const own = Object.fromEntries(
		(['front', 'back', 'left', 'right', 'top'] as const).map((key) => [key, { material: s[key] }]),
	);
	return {
		shape,
		sizes: s.sizes,
		joint: s.joint,
		material: s.material,
		ends: {
			fit: shape.kind === 'tapered' && s.fit === 'rabbet' ? 'over' : s.fit,
			rabbet: s.rabbet,
		},
		boards: own,
	};
}

/** Walls with things in them. */
export const fullBox: fc.Arbitrary<Asked> = fc
	.tuple(fc.oneof(plain, slanted, stepped, truncated), shell, filling)
	.map(([shape, s, f]): Asked => {
		const width = shape.width;
		return {
			...shellAsked(shape, s),
			doublers: f.doubler ? [{ board: f.doubler, material: 'mdf-12' }] : [],
			dividers: f.divider ? [{ across: f.across, at: f.divider * 300, material: 'mdf-12' }] : [],
			braces: f.brace
				? [
						{
							kind: 'window' as const,
							across: 'width' as const,
							at: f.brace * width,
							rim: f.rim,
							windows: f.windows,
						},
					]
				: [],
			cleats: f.cleats ? { where: f.cleats, width: 30, material: 'mdf-12' } : null,
			vents: f.slot
				? [
						{
							kind: 'slot' as const,
							along: f.slot as 'bottom',
							gap: f.gap,
							bend: f.bend,
							material: 'mdf-12',
							goal: { by: 'length' as const, length: f.length },
						},
					]
				: [],
		};
	});

const inTapered = fc.record({
	layers: fc.uniqueArray(fc.constantFrom('front', 'back', 'left', 'right', 'top', 'bottom'), {
		maxLength: 2,
	}),
	divider: fc.option(fc.record({ across, at: fc.double({ min: 0.25, max: 0.75, noNaN: true }) })),
	// A frame or a shelf: both would cross each other.
	brace: fc.constantFrom('frame', 'shelf', null),
	frame: fc.record({ across, at: fc.double({ min: 0.2, max: 0.8, noNaN: true }) }),
	shelf: fc.record({
		across: fc.constantFrom('height' as const, 'depth' as const),
		at: fc.double({ min: 0.25, max: 0.75, noNaN: true }),
		from: fc.constantFrom(0, 150),
		length: mm(80, 900),
	}),
	rim: mm(30, 50),
	cleats: fc.option(fc.constantFrom('corners' as const, 'ends' as const, 'both' as const)),
	width: mm(15, 35),
});

/** A double-tapered box with layers, a divider, frames and cleats. */
export const fullTapered: fc.Arbitrary<Asked> = fc
	.tuple(tapered, shell, inTapered)
	.map(([shape, s, f]): Asked => {
		const size = { width: shape.front.width, height: shape.front.height, depth: shape.depth };
		const at = (place: { across: keyof typeof size; at: number }) => ({
			across: place.across,
			at: place.at * size[place.across],
		});
		const { rim } = f;
		return {
			...shellAsked(shape, s),
			doublers: f.layers.map((board) => ({ board, material: 'mdf-12' })),
			dividers: f.divider ? [{ ...at(f.divider), material: 'mdf-12' }] : [],
			braces: [
				...(f.brace === 'frame' ? [{ kind: 'window' as const, rim, ...at(f.frame) }] : []),
				...(f.brace === 'shelf'
					? [
							{
								kind: 'shelf' as const,
								across: f.shelf.across,
								at: at(f.shelf).at,
								from: f.shelf.from,
								length: f.shelf.length,
							},
						]
					: []),
			],
			cleats: f.cleats ? { where: f.cleats, width: f.width, material: 'mdf-12' } : null,
		};
	});

const DIVIDED: Readonly<Record<'plain' | 'slanted' | 'tapered', Asked['shape']>> = {
	plain: { kind: 'plain', width: 600, height: 420, depth: 400 },
	slanted: {
		kind: 'slanted',
		width: 600,
		height: 420,
		lean: { by: 'depths', bottom: 460, top: 340 },
	},
	tapered: {
		kind: 'tapered',
		front: { width: 600, height: 420 },
		back: { width: 520, height: 380 },
		depth: 400,
	},
};

/** Boxes of three forms with a driver in their one divider, either way, its cut-out a rectangle. */
export const dividedBox: fc.Arbitrary<Asked> = fc
	.record({
		kind: fc.constantFrom('plain' as const, 'slanted' as const, 'tapered' as const),
		across: fc.constantFrom('width' as const, 'height' as const, 'depth' as const),
		at: fc.integer({ min: 130, max: 200 }),
		into: fc.constantFrom('far' as const, 'near' as const),
		long: fc.integer({ min: 60, max: 150 }),
		wide: fc.integer({ min: 60, max: 150 }),
		material: fc.constantFrom('ply-18', 'mdf-12'),
		doubled: fc.boolean(),
	})
	.map(({ kind, across, at, into, long, wide, material, doubled }): Asked => {
		const cutout = [
			{ x: 0, y: 0 },
			{ x: long, y: 0 },
			{ x: long, y: wide },
			{ x: 0, y: wide },
		];
		return {
			shape: DIVIDED[kind],
			doublers: doubled ? [{}] : [],
			dividers: [{ across, at, material }],
			drivers: [
				{
					board: 'divider-1',
					into,
					cutout: { kind: 'free', outline: cutout },
					frame: 220,
					depth: 60,
				},
			],
		};
	});

const crossing = fc.record({
	kind: fc.constantFrom('frame', 'shelf', 'shelf'),
	across: fc.constantFrom('height' as const, 'depth' as const, 'width' as const),
	at: mm(60, 320),
	from: fc.constantFrom(0, 80, 200),
	length: mm(80, 900),
	rim: mm(30, 60),
	windows: fc.constantFrom(1, 1, 2, 3),
	material: boards,
});

/** A box of any form with braces that stand in each other's way. */
export const crossedBox: fc.Arbitrary<Asked> = fc
	.tuple(emptyBox, fc.array(crossing, { minLength: 2, maxLength: 4 }), fc.constantFrom(0, 0.3, 1))
	.map(([box, list, braceFit]): Asked => {
		const braces = list.map((f) => {
			const { across, at, from, length, rim, windows, material } = f;
			return f.kind === 'frame' || across === 'width'
				? { kind: 'window' as const, across, at, rim, windows, material }
				: { kind: 'shelf' as const, across, at, from, length, material };
		});
		return { ...box, braces, braceFit };
	});
