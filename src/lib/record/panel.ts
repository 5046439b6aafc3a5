import type { PanelDetail, PanelPlan } from '../design';
import { z } from '../job';
import {
	fieldsOf,
	howMany,
	inDegrees,
	inKg,
	millimetres,
	lineOf,
	listOf,
	oneOf,
	outlineOf,
	rectOf,
	saying,
	xy,
	yesNo,
} from './units';

type Of<K extends keyof PanelDetail> = Extract<PanelDetail[K], readonly unknown[]>[number];
type Device = Omit<Of<'devices'>, 'at'>;

const ends = z.enum(['wrapped', 'bare', 'tucked']);

const fit = fieldsOf<PanelDetail['fit']>()({
	opening: outlineOf('opening'),
	board: outlineOf('board'),
	finished: outlineOf('with its cloth'),
	sizes: z.strictObject({
		opening: rectOf('round the opening'),
		board: rectOf('round the board'),
		finished: rectOf('round the finished panel'),
	}),
	edges: listOf(
		fieldsOf<PanelDetail['fit']['edges'][number]>()({
			edge: howMany('number of the edge'),
			end: ends.describe('how the cloth ends there'),
			length: millimetres('of the edge of the opening'),
			cloth: millimetres('pressed cloth on it'),
			gap: millimetres('that will be seen'),
			setIn: millimetres('from the opening to the board'),
			finishedIn: millimetres('from the opening to the finished edge'),
			boardGap: millimetres('from board to board of the neighbour').nullable(),
		}),
		'set-backs edge by edge',
	),
	openingEdges: listOf(
		howMany('number of the edge').nullable(),
		'edges of the outline of the opening; null for a rounding',
	),
	boardEdges: listOf(ends, 'how each edge of the outline of the board ends'),
	boardNumbers: listOf(
		listOf(howMany('number of an edge of the opening'), 'two for a rounding'),
		'what each edge of the board is known by',
	),
});

const window = fieldsOf<Of<'windows'>>()({
	id: saying('mark'),
	name: saying('name'),
	wanted: outlineOf('clear opening asked for'),
	hole: outlineOf('hole in the board'),
	finished: outlineOf('open once the cloth is turned in'),
	wrapped: yesNo('is cloth turned in'),
	build: millimetres('boards glued up at its edge'),
});

const layer = fieldsOf<Of<'layers'>>()({
	id: saying('mark'),
	name: saying('name'),
	place: saying('raised or recessed'),
	covering: saying('how it is covered'),
	on: saying('the layer it lies on; null for the panel').nullable(),
	cloth: saying('cloth that covers it').nullable(),
	pressed: millimetres('that cloth, pressed'),
	surface: saying('whose cloth it is; null for the panel').nullable(),
	piece: outlineOf('board to be cut').nullable(),
	hole: outlineOf('hole or seat in what it belongs to').nullable(),
	depth: millimetres('of the seat, or the whole thickness'),
	finished: outlineOf('seen once covered'),
	material: saying('board'),
	thickness: millimetres('measured'),
	foam: millimetres('foam on it'),
	bottom: millimetres('lower face of the piece, from the back of the board'),
	top: millimetres('upper face of the piece, from the back of the board'),
	step: millimetres('height of the step the eye sees'),
});

const groove = fieldsOf<NonNullable<PanelDetail['groove']>>()({
	width: millimetres('width'),
	depth: millimetres('depth'),
	offset: millimetres('centre line from the edge'),
	runs: listOf(lineOf('centre line, as seen from the front'), 'its runs'),
	length: millimetres('all runs together'),
	stops: listOf(z.string(), 'what it stops at'),
});

const fixings = fieldsOf<NonNullable<PanelDetail['fixings']>>()({
	kind: oneOf(['clips', 'screws'], 'which'),
	at: lineOf('where'),
	hole: millimetres('diameter of the hole'),
	depth: millimetres('how deep the hole goes').nullable(),
	inset: millimetres('from the edge'),
	widest: millimetres('farthest from one to the next'),
});

const cover = fieldsOf<Of<'covers'>>()({
	id: saying('mark'),
	name: saying('name'),
	cloth: saying('cloth on it').nullable(),
	pressed: millimetres('that cloth, pressed'),
	hole: outlineOf('hole in the board of the panel'),
	board: outlineOf('board of the cover'),
	finished: outlineOf('the cover with its cloth'),
	gap: millimetres('that will be seen'),
	boardGap: millimetres('from board to board'),
	ledge: z.strictObject({
		outer: outlineOf('outside of the ledge'),
		inner: outlineOf('inside of the ledge'),
		material: saying('board'),
		thickness: millimetres('measured'),
	}),
	finger: outlineOf('finger hole').nullable(),
	magnets: lineOf('middles of the magnets'),
	magnet: millimetres('diameter of each magnet').nullable(),
	layers: listOf(layer, 'pieces of raised layers that run on over it'),
});

const two = (what: string) =>
	z.strictObject({ outer: outlineOf('outside'), inner: outlineOf('inside') }).describe(what);

const ring = fieldsOf<Of<'rings'>>()({
	id: saying('mark'),
	name: saying('name'),
	hole: outlineOf('the hole it trims'),
	board: two('its board'),
	finished: two('finished'),
	thickness: millimetres('measured'),
	rebate: z
		.strictObject({ depth: millimetres('depth'), outline: outlineOf('the rebate') })
		.nullable()
		.describe('what it is let into; null where it lies on the wall'),
});

const device = fieldsOf<Device>()({
	id: saying('mark'),
	name: saying('name'),
	body: outlineOf('the device'),
	space: outlineOf('the device with the free space round it'),
	reach: listOf(outlineOf('room for hands and plugs'), 'at its sides'),
	height: millimetres('of the device'),
	over: millimetres('free above it'),
	mass: inKg('of the device'),
});

const detail = fieldsOf<Omit<PanelDetail, 'devices'> & { readonly devices: readonly Device[] }>()({
	hand: oneOf(['L', 'R'], 'of a pair; null for a panel by itself').nullable(),
	both: yesNo('is the mirror image made as well'),
	label: saying('mark written on it'),
	cloth: z
		.strictObject({
			id: saying('cloth'),
			pressed: millimetres('pressed'),
			nap: inDegrees('where the nap points, counter-clockwise from the right'),
		})
		.nullable(),
	cornerPatches: yesNo('are sharp inside corners patched with cloth'),
	seams: listOf(z.tuple([xy, xy]), 'seams of the cloth that were placed'),
	foam: millimetres('foam under the cloth'),
	fit,
	material: saying('board'),
	thickness: millimetres('measured'),
	leaves: listOf(outlineOf('one part'), 'parts of the board between its hinges'),
	windows: listOf(window, 'windows'),
	layers: listOf(layer, 'raised and recessed layers'),
	groove: groove.nullable(),
	fixings: fixings.nullable(),
	covers: listOf(cover, 'service covers'),
	hinges: listOf(
		fieldsOf<Of<'hinges'>>()({
			id: saying('mark'),
			from: xy,
			to: xy,
			gap: millimetres('between the leaves'),
		}),
		'folds in the cloth',
	),
	rings: listOf(ring, 'rings that trim a hole'),
	devices: listOf(device, 'devices'),
	drills: listOf(
		fieldsOf<Of<'drills'>>()({
			n: howMany('number of the hole'),
			x: millimetres('from the left of the board'),
			y: millimetres('from the lower edge of the board'),
			diameter: millimetres('diameter'),
			of: saying('what it is for'),
		}),
		'holes to drill',
	),
	zones: listOf(
		fieldsOf<Of<'zones'>>()({
			id: saying('mark'),
			name: saying('name'),
			kind: saying('what must not be harmed there'),
			outline: outlineOf('the zone'),
		}),
		'zones to keep clear',
	),
	assembly: listOf(z.string(), 'how it goes together, in order'),
});

export const panelFields = z.strictObject({
	id: saying('mark of the panel'),
	name: saying('name'),
	detail: detail
		.optional()
		.describe(
			'seen from the front, x right, y up, in the frame of the opening; absent where there is no board to speak of',
		),
});

export function panelFile({ id, name, detail }: PanelPlan): object {
	const devices = detail?.devices.map(({ at: _, ...device }) => device);
	return { id, name, detail: detail && { ...detail, devices } };
}
