import { field, z } from '../zod';
import {
	count,
	degreesField,
	distanceField,
	id,
	name,
	note,
	percent,
	position,
	size,
} from '../fields';
import { cover, hinge, ring } from './cover';
import { device, zone } from './device';
import { edges } from './edge';
import { layer, panelFoam, panelWindow } from './layer';
import { outlineShape } from './outline';

const groove = z.union([
	z.enum(['shop', 'none']),
	z.strictObject({
		width: field(size.prefault(4), { label: 'Width', help: 'Width of the groove' }),
		depth: field(size.prefault(5), { label: 'Depth', help: 'Depth of the groove' }),
		offset: field(distanceField.prefault(12), {
			label: 'From the edge',
			help: 'From the edge to the groove',
		}),
	}),
]);

const fixings = z.strictObject({
	kind: field(z.enum(['clips', 'screws']).default('clips'), {
		label: 'Kind',
		help: 'What holds the panel in',
	}),
	spacing: field(size.prefault(150), { label: 'Spacing', help: 'Farthest apart' }),
	inset: field(size.prefault(30), {
		label: 'From the edge',
		help: 'From the edge to the middle of the fixing',
	}),
	hole: field(size.prefault(8), { label: 'Hole', help: 'Hole for the fixing' }),
	depth: field(size.nullable().default(null), {
		label: 'Depth',
		help: 'How deep its hole goes; left empty, as deep as a clip reaches, and through for a screw',
	}),
});

const point = z.strictObject({
	x: field(position, { label: 'From the left', help: 'From the left of the panel' }),
	y: field(position, { label: 'From the bottom', help: 'From the bottom' }),
});

/**
 * A trim panel that fills an opening. Seen from the front, x to the right, y up, as it stands in
 * the vehicle.
 */
export const panel = z.strictObject({
	id,
	name,
	opening: field(outlineShape, { label: 'Opening', help: 'The opening it fills' }),
	edges: field(edges.prefault({}), { label: 'Edges', help: 'How it ends at each edge' }),
	material: field(id, { label: 'Board', help: 'Board', refersTo: 'materials' }),
	cloth: field(id.nullable().default(null), {
		label: 'Cloth',
		help: 'Cloth; none for a bare panel',
		refersTo: 'cloths',
	}),
	foam: field(panelFoam, { label: 'Foam', help: 'Foam under the cloth' }),
	margin: field(size.prefault(40), {
		label: 'Turn-under',
		help: 'Cloth turned on to the back where there is no groove',
	}),
	grip: field(distanceField.prefault(15), {
		label: 'Grip',
		help: 'Cloth to hold on to, trimmed away afterwards',
	}),
	groove: field(groove.default('shop'), {
		label: 'Knife groove in the back',
		options: { shop: 'as the shop cuts it', width: 'its own' },
		help: 'as the shop cuts it, none, or its own',
	}),
	cornerPatches: field(z.boolean().default(false), {
		label: 'Corner patches',
		help: 'A patch of cloth for each inside corner the cloth cannot stretch round',
	}),
	nap: field(degreesField(-360, 360).default(-90), {
		label: 'Nap',
		help: 'Where the nap points, degrees left from the right; -90 is down',
		unit: '°',
	}),
	napAnyWay: field(z.boolean().default(false), {
		label: 'Nap any way',
		help: 'Let the cloth lie any way, whatever its nap',
	}),
	lot: field(z.string().max(60).default(''), {
		label: 'Dye lot',
		help: 'Panels of one group come off one dye lot',
	}),
	windows: field(z.array(panelWindow).max(40).default([]), {
		label: 'Windows',
		help: 'Openings through the panel',
	}),
	layers: field(z.array(layer).max(40).default([]), {
		label: 'Layers',
		help: 'Steps in and out, from the board upwards',
	}),
	covers: field(z.array(cover).max(20).default([]), {
		label: 'Service covers',
		help: 'Service covers',
	}),
	hinges: field(z.array(hinge).max(6).default([]), {
		label: 'Fold lines',
		help: 'Fold lines of a floor or lid',
	}),
	devices: field(z.array(device).max(60).default([]), {
		label: 'Devices',
		help: 'Devices on an equipment board',
	}),
	rings: field(z.array(ring).max(20).default([]), {
		label: 'Rings',
		help: 'Rings that trim a pass-through',
	}),
	damping: field(percent.max(100).default(0), {
		label: 'Damping',
		help: 'Damping sheet on the back, per cent of its area',
	}),
	room: field(size.nullable().default(null), {
		label: 'Room in front',
		help: 'Depth there is in front of the board',
	}),
	pair: field(z.enum(['left', 'right', 'both']).nullable().default(null), {
		label: 'Pair',
		options: {
			left: 'the left one, as drawn',
			right: 'the right one, as drawn',
			both: 'both: the left one as drawn, the right one mirrored',
		},
		help: 'Which one of a pair is drawn here, so that it is marked L or R; or both of them, made from one drawing',
	}),
	fixings: field(fixings.nullable().default(null), { label: 'Fixings', help: 'What holds it in' }),
	zones: field(z.array(zone).max(40).default([]), {
		label: 'Zones to keep clear',
		help: 'Places to keep clear or within reach',
	}),
	seams: field(
		z
			.array(
				z.strictObject({
					from: field(point, { label: 'From' }),
					to: field(point, { label: 'To' }),
				}),
			)
			.max(20)
			.default([]),
		{ label: 'Seams', help: 'Seams in the cloth, from edge to edge' },
	),
	count: field(count.default(1), { label: 'How many', help: 'How many alike' }),
	note: field(note.default(''), { label: 'Note', help: 'Note for the bench' }),
});

export type Panel = z.output<typeof panel>;
