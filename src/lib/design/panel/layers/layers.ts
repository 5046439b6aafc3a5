import type { Path, Layer } from '../../../job';
import type { Outline } from '../../../geometry';
import { ticks, type Length, mm } from '../../../measure';
import { boardAsked, clothAsked, complain, say, type Bench } from '../bench';
import { placeShape, grownBy } from '../fit';
import type { LayerFigure } from '../figures';

/** What a layer stands on or is let into. */
interface Host {
	readonly id: string | null;
	readonly bottom: number;
	readonly top: number;
	/** Whose cloth covers it: a layer's id or null for the panel's; undefined when it is bare. */
	readonly surface: string | null | undefined;
	readonly pressed: number;
	readonly cloth: string | null;
}

/**
 * Layers from the board upwards; one whose outline, board or host is missing is left out and said.
 */
export function layerFigures(bench: Bench, thickness: Length): LayerFigure[] {
	const cloth = clothAsked(bench, bench.panel.cloth, ['cloth']);
	const board: Host = {
		id: null,
		bottom: 0,
		top: thickness,
		surface: cloth ? null : undefined,
		pressed: cloth?.pressed ?? 0,
		cloth: cloth?.id ?? null,
	};
	const made = new Map<string | null, Host>([[null, board]]);
	const figures: LayerFigure[] = [];
	bench.panel.layers.forEach((layer, i) => {
		const host = made.get(layer.on);
		if (!host) return noHost(bench, layer, i);
		const figure = layerFigure(bench, layer, i, host);
		if (!figure) return;
		figures.push(figure);
		if (layer.place === 'raised') made.set(layer.id, hostOf(figure));
	});
	return figures;
}

function hostOf(f: LayerFigure): Host {
	const surface = f.covering === 'bare' ? undefined : f.surface;
	return { id: f.id, bottom: f.bottom, top: f.top, surface, pressed: f.pressed, cloth: f.cloth };
}

function noHost(bench: Bench, layer: Layer, i: number): void {
	const exists = bench.panel.layers.some((l) => l.id === layer.on);
	bench.log.stop(
		['layers', i, 'on'],
		exists
			? `${layer.name} belongs to '${layer.on}', which comes after it, is a recess or could not be made.`
			: `${layer.name} belongs to '${layer.on}', and there is no such layer.`,
		'Name a raised layer further up the list, or none for the board itself.',
	);
}

function layerFigure(bench: Bench, layer: Layer, i: number, host: Host): LayerFigure | null {
	const path = ['layers', i];
	const drawn = placeShape(layer.outline, bench.job.shop.ruler);
	complain(bench, [...path, 'outline'], drawn.complaints);
	const board = boardAsked(bench, layer.material, [...path, 'material']);
	if (drawn.outline === null || !board) return null;
	const own = ownCloth(bench, layer, path);
	sayIdle(bench, layer, host, path);
	const covered = layer.covering === 'with' ? host.pressed : own.pressed;
	// Where the panel is bare too, all is as what lies beneath.
	const bareOnly = layer.covering === 'with' && host.surface === undefined;
	if (bareOnly && bench.panel.cloth !== null) noCloth(bench, layer, path);
	const base: Base = {
		id: layer.id,
		name: layer.name,
		place: layer.place,
		covering: layer.covering,
		on: layer.on,
		cloth: layer.covering === 'with' ? host.cloth : own.id,
		pressed: ticks(covered),
		surface: layer.covering === 'own' ? layer.id : (host.surface ?? null),
		material: board.id,
		thickness: board.measured,
		foam: layer.foam?.thickness ?? ticks(0),
	};
	const shape = { outline: drawn.outline, host, own: own.pressed };
	const figure =
		layer.place === 'raised' ? raised(layer, base, shape) : recessed(layer, base, shape);
	if (!figure) closesUp(bench, layer, path);
	if (figure?.hole && layer.place === 'raised') checkSeat(bench, layer, host, path);
	return figure;
}

/** What is filled in and has no say in this layer. */
function sayIdle(bench: Bench, layer: Layer, host: Host, path: Path): void {
	const { name, cloth, covering, place, sink } = layer;
	if (cloth !== null && covering !== 'own' && (covering === 'bare' || cloth !== host.cloth))
		bench.log.check(
			[...path, 'cloth'],
			`${name} names the cloth '${cloth}', but it is ${covering === 'bare' ? 'left bare' : 'covered with what lies beneath'}; no such cloth is cut for it.`,
			'Wrap it by itself, or name no cloth here.',
		);
	if (sink > 0 && (place === 'recessed' || covering === 'with'))
		bench.log.note(
			[...path, 'sink'],
			`${name} is ${place === 'recessed' ? 'a recess' : 'covered with what lies beneath'}; the depth of a seat has no say in it.`,
			place === 'recessed'
				? 'How deep a recess is follows from the board it is cut through; leave the seat at 0.'
				: 'Wrap it by itself or leave it bare to set it in, or leave the seat at 0.',
		);
}

type Base = Pick<
	LayerFigure,
	| 'id'
	| 'name'
	| 'place'
	| 'covering'
	| 'on'
	| 'cloth'
	| 'pressed'
	| 'surface'
	| 'material'
	| 'thickness'
	| 'foam'
>;

interface Given {
	readonly outline: Outline;
	readonly host: Host;
	/** Pressed thickness of the layer's own cloth; 0 without. */
	readonly own: number;
}

function ownCloth(
	bench: Bench,
	layer: Layer,
	path: Path,
): { readonly id: string | null; readonly pressed: number } {
	if (layer.covering !== 'own') return { id: null, pressed: 0 };
	const id = layer.cloth ?? bench.panel.cloth;
	const cloth = clothAsked(bench, id, [...path, 'cloth']);
	if (id === null)
		bench.log.check(
			[...path, 'cloth'],
			`${layer.name} is to be wrapped by itself, but neither it nor the panel has a cloth.`,
			'Choose a cloth, or leave it bare.',
		);
	return { id: cloth?.id ?? null, pressed: cloth?.pressed ?? 0 };
}

/**
 * A raised piece. Set in, its seat is the piece grown on every side by its own cloth, the cloth of
 * the host that is turned down into the seat, and the clearance: two cloth thicknesses wider in
 * each direction for one cloth.
 */
function raised(layer: Layer, base: Base, { outline, host, own }: Given): LayerFigure | null {
	const sunk = layer.covering !== 'with' && layer.sink > 0;
	const depth = sunk ? Math.min(layer.sink, host.top - host.bottom) : 0;
	const round = own + host.pressed + layer.clearance;
	const hole = sunk ? grownBy(outline, round) : null;
	const finished = grownBy(outline, base.pressed);
	if (!finished || (sunk && !hole)) return null;
	const bottom = host.top - depth;
	const top = bottom + base.thickness;
	return {
		...base,
		piece: outline,
		hole,
		depth: ticks(depth),
		finished,
		bottom: ticks(bottom),
		top: ticks(top),
		step: ticks(top + base.foam - host.top),
	};
}

/**
 * A recess: a hole through the host; behind the board a floor that laps under it, on a layer the
 * board beneath is the floor.
 */
function recessed(layer: Layer, base: Base, { outline, host }: Given): LayerFigure | null {
	const finished = grownBy(outline, -host.pressed);
	const piece = host.id === null ? grownBy(outline, layer.lap) : outline;
	if (!finished || !piece) return null;
	const deep = host.top - host.bottom;
	return {
		...base,
		piece: host.id === null ? piece : null,
		hole: outline,
		depth: ticks(deep),
		finished,
		bottom: ticks(host.id === null ? host.bottom - base.thickness : host.bottom),
		top: ticks(host.bottom),
		step: ticks(deep - base.foam),
	};
}

function closesUp(bench: Bench, layer: Layer, path: Path): void {
	bench.log.stop(
		[...path, 'outline'],
		`${layer.name} has a place so narrow that it closes up when cloth and clearance are counted.`,
		'Open that place up, or round its inside corners.',
	);
}

function noCloth(bench: Bench, layer: Layer, path: Path): void {
	bench.log.check(
		[...path, 'covering'],
		`${layer.name} is to be covered with what lies beneath it, and that is bare.`,
		'Wrap it by itself, leave it bare, or give what lies beneath a cloth.',
	);
}

/** Board under a seat: less of it breaks. Common practice, no source. */
const LEAST_LEFT = mm(3);

function checkSeat(bench: Bench, layer: Layer, host: Host, path: Path): void {
	const deep = host.top - host.bottom;
	if (layer.sink > deep)
		bench.log.check(
			[...path, 'sink'],
			`The seat of ${layer.name} is ${say(bench, layer.sink)} deep and the board ${say(bench, deep)} thick; it goes right through.`,
			'Give a shallower seat, or leave it as a through seat with something behind it to glue to.',
		);
	else if (layer.sink > 0 && layer.sink < deep && deep - layer.sink < LEAST_LEFT)
		bench.log.check(
			[...path, 'sink'],
			`The seat of ${layer.name} leaves ${say(bench, deep - layer.sink)} of board.`,
			`Leave ${bench.log.least(LEAST_LEFT)} or more, or make it a through seat.`,
		);
}
