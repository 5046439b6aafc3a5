import { type BoxBoard, pointOnBoard } from '../../design';
import { bounds, type Point, type Rect } from '../../geometry';
import type { Path } from '../../job';
import { nth, snap } from '../../measure';
import type { DrawnBox } from './box-measures';
import { facesOn, holeSeen, roundBoard, type Sight } from './project';
import type { Grip, Measure, StageShape } from './stage-view';

/** What a view shows of the things mounted on a box or standing in it. */
export interface Things {
	readonly shapes: readonly StageShape[];
	readonly measures: readonly Measure[];
	readonly grips: readonly Grip[];
}

type Hole = BoxBoard['holes'][number];

const NONE: Things = { shapes: [], measures: [], grips: [] };
export const together = (all: readonly Things[]): Things => ({
	shapes: all.flatMap((t) => t.shapes),
	measures: all.flatMap((t) => t.measures),
	grips: all.flatMap((t) => t.grips),
});

/** Something in a row on a board, by its holes. */
interface Mounted {
	readonly name: string;
	readonly path: Path;
	readonly board: string;
	readonly count: number;
	readonly diameter?: { readonly label: string; readonly path: Path; readonly value: number };
	readonly frame?: number;
	/** Where it is asked for, from the lower left corner of its board; null: in the middle. */
	readonly asked: { readonly across: number | null; readonly up: number | null };
}

/** Drivers, passive radiators, tubes and the terminal, where their board is seen face on. */
export function mountedSeen(drawn: DrawnBox, sight: Sight): Things {
	return together(
		drawn.figures.boards
			.filter((b) => (b.role === 'wall' || b.role === 'end') && facesOn(b, sight))
			.flatMap((b) => mountedOn(drawn, b).map(([m, holes]) => seen(m, holes, b, sight))),
	);
}

/**
 * Things of one board with their holes. Where one of a kind has no hole, since it may not stand
 * where it was put, no hole says whose it is: those are drawn where they are asked for.
 */
function mountedOn(drawn: DrawnBox, board: BoxBoard): [Mounted, Hole[]][] {
	const on = (kind: string, all: Mounted[]): [Mounted, Hole[]][] => {
		const here = all.filter((m) => m.board === board.key);
		const holes = board.holes.filter((h) => h.of === kind);
		if (holes.length !== here.reduce((n, m) => n + m.count, 0)) return here.map((m) => [m, []]);
		let next = 0;
		return here.map((m) => [m, holes.slice(next, (next += m.count))]);
	};
	const { box, at } = drawn;
	const framed = (list: 'drivers' | 'radiators', word: string): Mounted[] =>
		box[list].map((d, i) => ({
			name: d.name ?? `${word} ${i + 1}`,
			path: [...at, list, i],
			board: d.board,
			count: d.count,
			frame: d.frame,
			asked: d.at,
			...(d.cutout.kind === 'round'
				? {
						diameter: {
							label: 'Cut-out',
							path: [...at, list, i, 'cutout', 'diameter'],
							value: d.cutout.diameter,
						},
					}
				: {}),
		}));
	const tubes = box.vents.flatMap((v, i): Mounted[] =>
		v.kind === 'round'
			? [
					{
						name: v.name ?? `Vent ${i + 1}`,
						path: [...at, 'vents', i],
						board: v.board,
						count: v.count,
						asked: v.at,
						diameter: {
							label: 'Inside diameter',
							path: [...at, 'vents', i, 'diameter'],
							value: v.diameter,
						},
					},
				]
			: [],
	);
	const cup: Mounted[] = box.terminal
		? [
				{
					name: 'Terminal',
					path: [...at, 'terminal'],
					board: box.terminal.board,
					count: 1,
					asked: box.terminal.at,
				},
			]
		: [];
	return [
		...on('driver', framed('drivers', 'Driver')),
		...on('radiator', framed('radiators', 'Passive radiator')),
		...on('vent', tubes),
		...on('terminal', cup),
	];
}

function seen(m: Mounted, holes: readonly Hole[], b: BoxBoard, sight: Sight): Things {
	const low = bounds(b.outside);
	const mid = holes.length > 0 ? middle(holes.map((h) => h.centre)) : askedOn(low, m);
	const at = sight.flat(pointOnBoard(b, mid));
	const first = holes[0]?.centre ?? mid;
	const corner = sight.flat(pointOnBoard(b, low));
	const across = snap(mid.x - low.x);
	const up = snap(mid.y - low.y);
	const place = (key: 'across' | 'up'): Path => [...m.path, 'at', key];
	return {
		shapes: holes.length > 0 ? cut(m, holes, b, sight) : askedFor(m, at),
		measures: [
			...(m.diameter ? [inTheMiddle(m.diameter, sight.flat(pointOnBoard(b, first)))] : []),
			{
				label: `${m.name}, across`,
				from: corner,
				to: { x: at.x, y: corner.y },
				off: 'above',
				row: 0,
				value: across,
				path: place('across'),
				only: m.path,
			},
			{
				label: `${m.name}, up`,
				from: corner,
				to: { x: corner.x, y: at.y },
				off: 'right',
				row: 0,
				value: up,
				path: place('up'),
				only: m.path,
			},
		],
		grips: [
			{
				label: m.name,
				at,
				moves: [
					{ path: place('across'), along: 'x', grows: 1, value: across, least: 0 },
					{ path: place('up'), along: 'y', grows: 1, value: up, least: 0 },
				],
				only: m.path,
			},
		],
	};
}

/** What is cut for it, with its frame round it. */
function cut(m: Mounted, holes: readonly Hole[], b: BoxBoard, sight: Sight): StageShape[] {
	const { frame } = m;
	return holes.flatMap((h): StageShape[] => [
		...(frame === undefined
			? []
			: [
					{
						outlines: [ring(sight.flat(pointOnBoard(b, h.centre)), frame / 2)],
						line: 'narrow' as const,
					},
				]),
		{ outlines: [holeSeen(b, h.outline, sight)], line: 'wide', fill: 'bench', at: m.path },
	]);
}

/** Its round, dashed, where nothing is cut for it. */
function askedFor(m: Mounted, at: Point): StageShape[] {
	const across = m.diameter?.value ?? m.frame;
	return across === undefined
		? []
		: [{ outlines: [ring(at, across / 2)], line: 'dashed', at: m.path }];
}

function askedOn(round: Rect, { asked }: Mounted): Point {
	return {
		x: round.x + (asked.across ?? round.length / 2),
		y: round.y + (asked.up ?? round.width / 2),
	};
}

function inTheMiddle({ label, path, value }: NonNullable<Mounted['diameter']>, at: Point): Measure {
	return { label, from: at, to: at, off: 'in', row: 0, value: snap(value), path, sign: '⌀' };
}

const ring = (c: Point, r: number) => [
	{ x: c.x + r, y: c.y, bulge: 1 },
	{ x: c.x - r, y: c.y, bulge: 1 },
];

function middle(all: readonly Point[]): Point {
	const sum = (of: (p: Point) => number): number => all.reduce((n, p) => n + of(p), 0) / all.length;
	return { x: sum((p) => p.x), y: sum((p) => p.y) };
}

/** Along which line of a view a plate inside is moved. */
const ACROSS = {
	width: { view: 'above', along: 'x' },
	height: { view: 'side', along: 'y' },
	depth: { view: 'side', along: 'x' },
} as const;

/** Braces where they are seen edge on, with the field that says where each stands. */
export function bracesSeen({ box, figures, at }: DrawnBox, sight: Sight): Things {
	const plates = figures.boards.filter((b) => b.role === 'brace');
	const asked = box.braces.flatMap((b, i) => (b.kind === 'dowel' ? [] : [[b, i] as const]));
	if (plates.length !== asked.length) return NONE;
	return together(
		asked.map(([brace, i], n) => {
			const way = ACROSS[brace.across];
			const plate = nth(plates, n);
			const path: Path = [...at, 'braces', i];
			if (way.view !== sight.key) return NONE;
			const round = bounds(roundBoard(plate, sight));
			const mid = { x: round.x + round.length / 2, y: round.y + round.width / 2 };
			const datum =
				way.along === 'x' ? { x: mid.x - brace.at, y: 0 } : { x: 0, y: mid.y - brace.at };
			return oneBrace({
				name: brace.name ?? `Brace ${i + 1}`,
				path,
				way,
				mid,
				datum,
				value: brace.at,
			});
		}),
	);
}

interface BraceSeen {
	readonly name: string;
	readonly path: Path;
	readonly way: { readonly along: 'x' | 'y' };
	readonly mid: Point;
	readonly datum: Point;
	readonly value: number;
}

function oneBrace({ name, path, way, mid, datum, value }: BraceSeen): Things {
	const x = way.along === 'x';
	const place: Path = [...path, 'at'];
	return {
		shapes: [],
		measures: [
			{
				label: `${name}, place`,
				from: datum,
				to: x ? { x: mid.x, y: 0 } : { x: 0, y: mid.y },
				off: x ? 'below' : 'left',
				row: 0,
				value: snap(value),
				path: place,
				only: path,
			},
		],
		grips: [
			{
				label: name,
				at: mid,
				moves: [{ path: place, along: way.along, grows: 1, value, least: 0 }],
				only: path,
			},
		],
	};
}
