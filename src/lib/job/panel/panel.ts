import { z } from '../zod';
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
		width: size.prefault(4).describe('Width of the groove'),
		depth: size.prefault(5).describe('Depth of the groove'),
		offset: distanceField.prefault(12).describe('From the edge to the groove'),
	}),
]);

const fixings = z.strictObject({
	kind: z.enum(['clips', 'screws']).default('clips').describe('What holds the panel in'),
	spacing: size.prefault(150).describe('Farthest apart'),
	inset: size.prefault(30).describe('From the edge to the middle of the fixing'),
	hole: size.prefault(8).describe('Hole for the fixing'),
});

const point = z.strictObject({
	x: position.describe('From the left of the panel'),
	y: position.describe('From the bottom'),
});

/** A trim panel that fills an opening. Seen from the front, x to the right, y up, as it stands in the vehicle. */
export const panel = z.strictObject({
	id,
	name,
	opening: outlineShape.describe('The opening it fills'),
	edges: edges.prefault({}).describe('How it ends at each edge'),
	material: id.describe('Board'),
	cloth: id.nullable().default(null).describe('Cloth; none for a bare panel'),
	foam: panelFoam.describe('Foam under the cloth'),
	margin: size.prefault(40).describe('Cloth turned on to the back where there is no groove'),
	grip: distanceField.prefault(15).describe('Cloth to hold on to, trimmed away afterwards'),
	groove: groove
		.default('shop')
		.describe('Knife groove in the back: as the shop cuts it, none, or its own'),
	nap: degreesField(-360, 360)
		.default(-90)
		.describe('Where the nap points, degrees left from the right; -90 is down'),
	napAnyWay: z.boolean().default(false).describe('Let the cloth lie any way, whatever its nap'),
	lot: z.string().max(60).default('').describe('Panels of one group come off one dye lot'),
	windows: z.array(panelWindow).max(40).default([]).describe('Openings through the panel'),
	layers: z.array(layer).max(40).default([]).describe('Steps in and out, from the board upwards'),
	covers: z.array(cover).max(20).default([]).describe('Service covers'),
	hinges: z.array(hinge).max(6).default([]).describe('Fold lines of a floor or lid'),
	devices: z.array(device).max(60).default([]).describe('Devices on an equipment board'),
	rings: z.array(ring).max(20).default([]).describe('Rings that trim a pass-through'),
	damping: percent.max(100).default(0).describe('Damping sheet on the back, per cent of its area'),
	room: size.nullable().default(null).describe('Depth there is in front of the board'),
	pair: z
		.enum(['left', 'right', 'both'])
		.nullable()
		.default(null)
		.describe(
			'Left or right one of a pair, or both: drawn as the left one, mirrored for the right',
		),
	fixings: fixings.nullable().default(null).describe('What holds it in'),
	zones: z.array(zone).max(40).default([]).describe('Places to keep clear or within reach'),
	seams: z
		.array(z.strictObject({ from: point, to: point }))
		.max(20)
		.default([])
		.describe('Seams in the cloth, from edge to edge'),
	count: count.default(1).describe('How many alike'),
	note: note.default('').describe('Note for the bench'),
});

export type Panel = z.output<typeof panel>;
