import type { PanelDetail } from '../../design';
import { bounds, type Outline, type Point, type Rect } from '../../geometry';
import type { Panel, Path, PlacedShape } from '../../job';
import { snap } from '../../measure';
import { type Things, together } from './box-things';
import type { Grip, Measure, Move, StageShape, StageView } from './stage-view';

/** A panel and where it stands in the job. */
export interface DrawnPanel {
	readonly panel: Panel;
	readonly detail: PanelDetail;
	readonly at: Path;
}

/** The face of a panel, with a field at every dimension that is one. */
export function panelStage(drawn: DrawnPanel): StageView[] {
	const { detail } = drawn;
	const { fit } = detail;
	const ground: StageShape[] = [
		{ outlines: [fit.opening], line: 'space' },
		{ outlines: [fit.finished], line: 'wide', fill: 'sheet' },
		{ outlines: [fit.board], line: 'dashed' },
	];
	const opening = openingMeasures(drawn);
	const things = together([...laid(drawn), ...devices(drawn), ...lines(drawn)]);
	return [
		{
			key: 'front',
			title: 'Front',
			around: bounds(fit.opening),
			shapes: [...ground, ...things.shapes, ...zones(detail)],
			measures: [...opening.measures, ...things.measures],
			grips: [...opening.grips, ...things.grips],
		},
	];
}

const zones = (detail: PanelDetail): StageShape[] =>
	detail.zones.map((z) => ({ outlines: [z.outline], line: 'warn' }));

type Shape = PlacedShape['shape'];

/** Sizes of a shape that lies square to the drawing: their fields and where they are drawn. */
function sizesOf(
	shape: Shape,
): readonly { key: string; label: string; along: 'x' | 'y'; top?: true }[] {
	switch (shape.kind) {
		case 'rectangle':
		case 'oval':
			return [
				{ key: 'length', label: 'Length', along: 'x' },
				{ key: 'width', label: 'Width', along: 'y' },
			];
		case 'trapezoid':
			return [
				{ key: 'bottom', label: 'Bottom', along: 'x' },
				{ key: 'top', label: 'Top', along: 'x', top: true },
				{ key: 'height', label: 'Height', along: 'y' },
			];
		case 'circle':
			return [{ key: 'diameter', label: 'Diameter', along: 'x' }];
		default:
			return [];
	}
}

function openingMeasures({ panel, detail, at }: DrawnPanel): Things {
	const { opening } = panel;
	const round = bounds(detail.fit.opening);
	const sizes = sizesOf(opening);
	const shown: Measure[] = sizes.map(({ key, label, along, top }) => {
		const value = sizeIn(opening, key);
		const start = top && opening.kind === 'trapezoid' ? opening.shift : 0;
		const x = along === 'x';
		const y = top ? round.y + round.width : round.y;
		const x0 = opening.kind === 'trapezoid' && x ? start : round.x;
		return {
			label: `Opening, ${label.toLowerCase()}`,
			from: x ? { x: x0, y } : { x: round.x, y: round.y },
			to: x ? { x: x0 + value, y } : { x: round.x, y: round.y + value },
			off: x ? (top ? 'above' : 'below') : 'left',
			row: 0,
			value: snap(value),
			path: [...at, 'opening', key],
		};
	});
	const plain = sizes.length > 0 ? [] : overall(round);
	return {
		shapes: [],
		measures: [...shown, ...plain],
		grips: opening.kind === 'rectangle' ? edgeGrips(round, [...at, 'opening']) : [],
	};
}

function overall(r: Rect): Measure[] {
	const [x, y] = [r.x + r.length, r.y + r.width];
	const base = { row: 0, path: null } as const;
	return [
		{
			...base,
			label: 'Opening, across',
			from: r,
			to: { x, y: r.y },
			off: 'below',
			value: snap(r.length),
		},
		{
			...base,
			label: 'Opening, up',
			from: r,
			to: { x: r.x, y },
			off: 'left',
			value: snap(r.width),
		},
	];
}

/** Right and upper edge of an upright rectangle. */
function edgeGrips(r: Rect, path: Path, only?: Path): Grip[] {
	const [x, y] = [r.x + r.length, r.y + r.width];
	const own = only ? { only } : {};
	const move = (key: string, along: 'x' | 'y', value: number): Move => ({
		path: [...path, key],
		along,
		grows: 1,
		value,
		least: 1600,
	});
	return [
		{
			label: 'Length',
			at: { x, y: r.y + r.width / 2 },
			edge: [
				{ x, y: r.y },
				{ x, y },
			],
			moves: [move('length', 'x', r.length)],
			...own,
		},
		{
			label: 'Width',
			at: { x: r.x + r.length / 2, y },
			edge: [
				{ x: r.x, y },
				{ x, y },
			],
			moves: [move('width', 'y', r.width)],
			...own,
		},
	];
}

const sizeIn = (shape: Shape, key: string): number =>
	Number((shape as Readonly<Record<string, unknown>>)[key] ?? 0);

/** Layers, windows, covers and rings, each laid on the panel by its outline. */
function laid({ panel, detail, at }: DrawnPanel): Things[] {
	const seen = (
		list: 'layers' | 'windows' | 'covers' | 'rings',
		outlines: ReadonlyMap<string, readonly Outline[]>,
	) =>
		panel[list].flatMap((thing, i): Things[] => {
			const drawn = outlines.get(thing.id);
			const path = [...at, list, i];
			const fill = list === 'windows' ? 'bench' : 'sheet';
			return drawn ? [one(thing.name, path, thing.outline, drawn, fill)] : [];
		});
	const by = <T extends { readonly id: string }>(
		all: readonly T[],
		of: (t: T) => readonly Outline[],
	) => new Map(all.map((t) => [t.id, of(t)]));
	return [
		...seen(
			'layers',
			by(detail.layers, (l) => [l.finished]),
		),
		...seen(
			'windows',
			by(detail.windows, (w) => [w.finished]),
		),
		...seen(
			'covers',
			by(detail.covers, (c) => [c.finished]),
		),
		...seen(
			'rings',
			by(detail.rings, (r) => [r.finished.outer, r.finished.inner]),
		),
	];
}

function one(
	name: string,
	path: Path,
	{ shape, x, y, turn }: PlacedShape,
	outlines: readonly Outline[],
	fill: 'sheet' | 'bench',
): Things {
	const round = bounds(outlines[0] ?? []);
	const form = [...path, 'outline'];
	const upright = shape.kind === 'rectangle' && turn === 0;
	const body: Rect = upright ? { x, y, length: shape.length, width: shape.width } : round;
	const mid = { x: round.x + round.length / 2, y: round.y + round.width / 2 };
	return {
		shapes: [{ outlines, line: 'wide', fill, at: path }],
		measures: [
			...(turn === 0 ? ownSizes(name, shape, body, [...form, 'shape'], path) : []),
			...placeMeasures(name, { x, y }, { x, y }, form, path),
		],
		grips: [
			placeGrip(name, mid, { x, y }, form, path),
			...(upright ? edgeGrips(body, [...form, 'shape'], path) : []),
		],
	};
}

function ownSizes(name: string, shape: Shape, r: Rect, path: Path, only: Path): Measure[] {
	return sizesOf(shape).map(({ key, label, along, top }) => {
		const value = sizeIn(shape, key);
		const x = along === 'x';
		return {
			label: `${name}, ${label.toLowerCase()}`,
			from: { x: r.x, y: r.y },
			to: x ? { x: r.x + value, y: r.y } : { x: r.x, y: r.y + value },
			off: x ? 'above' : 'right',
			row: top ? 1 : 0,
			value: snap(value),
			path: [...path, key],
			only,
		};
	});
}

/** From the left and from the bottom of the panel. `corner`: the spot that is placed. */
function placeMeasures(
	name: string,
	value: Point,
	corner: Point,
	path: Path,
	only: Path,
): Measure[] {
	const origin = { x: corner.x - value.x, y: corner.y - value.y };
	return [
		{
			label: `${name}, from the left`,
			from: origin,
			to: { x: corner.x, y: origin.y },
			off: 'below',
			row: 1,
			value: snap(value.x),
			path: [...path, 'x'],
			only,
		},
		{
			label: `${name}, from the bottom`,
			from: origin,
			to: { x: origin.x, y: corner.y },
			off: 'left',
			row: 1,
			value: snap(value.y),
			path: [...path, 'y'],
			only,
		},
	];
}

function placeGrip(label: string, at: Point, value: Point, path: Path, only?: Path): Grip {
	const move = (along: 'x' | 'y'): Move => ({
		path: [...path, along],
		along,
		grows: 1,
		value: value[along],
		least: -Infinity,
	});
	return { label, at, moves: [move('x'), move('y')], ...(only ? { only } : {}) };
}

function devices({ panel, detail, at }: DrawnPanel): Things[] {
	return panel.devices.flatMap((device, i): Things[] => {
		const drawn = detail.devices.find((d) => d.id === device.id);
		if (!drawn) return [];
		const path = [...at, 'devices', i];
		const r = bounds(drawn.body);
		const mid = { x: r.x + r.length / 2, y: r.y + r.width / 2 };
		return [
			{
				shapes: [
					{ outlines: [drawn.space], line: 'dashed' },
					{ outlines: [drawn.body], line: 'narrow', fill: 'sunk', at: path },
				],
				measures: placeMeasures(device.name, device, r, path, path),
				grips: [placeGrip(device.name, mid, device, path, path)],
			},
		];
	});
}

/** Seams in the cloth and fold lines, by their ends. */
function lines({ panel, at }: DrawnPanel): Things[] {
	const ends = (list: 'seams' | 'hinges', word: string): Things[] =>
		panel[list].map(({ from, to }, i) => ({
			shapes: [{ outlines: [[from, to]], line: 'dashed', at: [...at, list, i] }],
			measures: [],
			grips: [
				placeGrip(`${word} ${i + 1}, one end`, from, from, [...at, list, i, 'from']),
				placeGrip(`${word} ${i + 1}, other end`, to, to, [...at, list, i, 'to']),
			],
		}));
	return [...ends('seams', 'Seam'), ...ends('hinges', 'Fold line')];
}
