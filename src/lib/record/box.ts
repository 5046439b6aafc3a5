import type { BoxFigures, BoxPlan } from '../design';
import { z } from '../job';
import { response } from './response';
import {
	bodyOf,
	fieldsOf,
	fromGrams,
	howMany,
	inCm2,
	inDegrees,
	inHertz,
	inKg,
	inLitres,
	millimetres,
	inMm2,
	listOf,
	oneOf,
	outlineOf,
	pure,
	sizes3,
	viewFrame,
	saying,
	xy,
	yesNo,
} from './units';

type Of<K extends keyof BoxFigures> = Extract<BoxFigures[K], readonly unknown[]>[number];
type Board = Of<'boards'>;

const across = (what: string) =>
	z
		.strictObject({ across: millimetres('across the drawing'), up: millimetres('up the drawing') })
		.describe(what);

const stands = (from: string) =>
	z.tuple([millimetres('from'), millimetres('to')]).describe(`from and to, from ${from}`);
/** A place from the left, the front and the bottom of the outside. */
const datum = z.strictObject({
	across: millimetres('from the left'),
	back: millimetres('from the front'),
	up: millimetres('from the bottom'),
});

/**
 * From the inside of the left end, the front and the bottom, each where it reaches farthest out.
 */
const spanFields = {
	fromLeft: stands('the inside of the left end'),
	fromFront: stands('the inside of the front'),
	fromBottom: stands('the inside of the bottom'),
};
const spans = z.strictObject(spanFields);

/** How holes for bolts or screws stand round their middle. */
const ofPattern = { count: howMany('holes'), middle: xy };
const pattern = z.discriminatedUnion('kind', [
	z.strictObject({
		...ofPattern,
		kind: z.literal('circle'),
		diameter: millimetres('of the circle their middles stand on'),
		angle: inDegrees('of the first one, counter-clockwise from the right'),
	}),
	z.strictObject({
		...ofPattern,
		kind: z.literal('rectangle'),
		across: millimetres('between their middles, across'),
		up: millimetres('between their middles, up'),
	}),
]);

const hole = fieldsOf<Board['holes'][number]>()({
	of: saying('what it is for: driver, vent, terminal, window, seat'),
	name: saying('what is set into it'),
	outline: outlineOf('the hole, in the frame of the faces of its board'),
	centre: xy,
	size: listOf(millimetres('diameter; or across, then up'), 'as it is dimensioned'),
	recess: millimetres('depth of a recess in the outside face; null right through').nullable(),
	face: oneOf(['inside'], 'the face a recess is cut from; absent: the outside').optional(),
	edge: millimetres('least distance to an edge of the outside face'),
	pattern: pattern.optional().describe('of a bolt or a screw: how all of them stand'),
});

const board = fieldsOf<Board>()({
	key: saying('which board of the box'),
	part: saying('id of its part'),
	label: saying('mark written on it'),
	name: saying('name'),
	role: saying('wall, end, doubler, overlay, divider, slot, brace, cleat or ring'),
	solid: bodyOf('the board'),
	frame: viewFrame,
	view: oneOf(
		['inside'],
		'its part is cut from the inside face; absent: from the outside',
	).optional(),
	outside: outlineOf('outside face, from the lower left of the rectangle round both faces'),
	inside: outlineOf('inside face, in the same frame'),
	edges: listOf(
		fieldsOf<Board['edges'][number]>()({
			letter: saying('letter of the seam'),
			tilt: inDegrees('saw tilt from square'),
			long: oneOf(['outside', 'inside'], 'the longer face at this edge'),
		}),
		'edges in the order of the corners',
	),
	holes: listOf(hole, 'holes and recesses'),
	rabbets: listOf(bodyOf('a rabbet'), 'taken away from it'),
	thickness: millimetres('measured thickness'),
	long: across('long face'),
	short: across('short face'),
	shift: z
		.strictObject({
			outside: across('outside face'),
			inside: across('inside face'),
			offset: across('what the rectangle round both is longer than the longer of them'),
		})
		.optional(),
	grain: oneOf(['across', 'up', 'any'], 'which way the grain runs in the drawing'),
	mass: inKg('this board'),
	notes: listOf(z.string(), 'what is told beside it'),
	devices: listOf(
		fieldsOf<Board['devices'][number]>()({
			name: saying('device'),
			side: oneOf(['outside', 'inside'], 'of the board it is on'),
			body: outlineOf('the device, in the frame of the faces'),
			space: outlineOf('the device with the free space round it'),
			height: millimetres('off the board'),
			chamber: howMany('number of the chamber it stands in').nullable(),
			mass: inKg('of the device'),
			note: saying('for the bench'),
		}),
		'devices screwed to it',
	),
	placing: listOf(
		fieldsOf<Board['placing'][number]>()({
			face: oneOf(['inside', 'outside'], 'which face, seen with it up'),
			outline: outlineOf('the face, from its own lower left corner'),
			feet: listOf(
				fieldsOf<Board['placing'][number]['feet'][number]>()({
					key: saying('which board'),
					label: saying('mark written on it'),
					name: saying('name'),
					outline: outlineOf('what it covers; its sides are the lines to be drawn'),
				}),
				'boards that stand on it',
			),
		}),
		'placing lines',
	),
});

const seam = fieldsOf<Of<'seams'>>()({
	letter: saying('letter on both edges'),
	between: z.tuple([z.string(), z.string()]).describe('names of the two boards'),
	kind: saying('kind of joint'),
	length: millimetres('along the seam'),
	area: inMm2('glued'),
	screws: howMany('screws'),
	brads: howMany('brads'),
	spacing: millimetres('between screws, as they come out evenly').nullable(),
});

const chamber = fieldsOf<Of<'chambers'>>()({
	number: howMany('number of the chamber, from 1'),
	gross: inLitres('air between the boards'),
	deductions: listOf(
		z.strictObject({ what: saying('what takes it up'), litres: inLitres('taken off') }),
		'line by line; gross less all of them is net',
	),
	net: inLitres('gross less the deductions'),
	vented: yesNo('has it a vent or passive radiators'),
	acting: inLitres('volume it acts like, stuffing counted'),
	stuffing: saying('how it is stuffed').nullable(),
	wanted: inLitres('net volume asked for').nullable(),
	sealed: fieldsOf<NonNullable<Of<'chambers'>['sealed']>>()({
		qtc: pure('total Q of driver and box at resonance'),
		fc: inHertz('resonance of driver and box'),
		f3: inHertz('3 dB down'),
		peak: pure('highest response over the pass band, dB'),
		wantedVolume: inLitres('for the Qtc asked for').nullable(),
	}).nullable(),
	tuning: inHertz(
		'all vents or passive radiators together; null too where it breathes through another',
	).nullable(),
	says: listOf(z.string(), 'what joins it to other chambers, and what is not worked out'),
});

const framed = {
	name: saying('driver'),
	board: saying('board it stands on'),
	chamber: howMany('chamber behind it').nullable(),
	front: howMany('chamber its cone looks into, of one on a divider').nullable(),
	edge: millimetres('least distance from the cut-out to an edge of its board'),
	room: millimetres('along its axis, from the seat of the flange'),
	roomAtRim: millimetres('at the rim of the magnet, from the seat of the flange'),
	depth: millimetres('mounting depth'),
	behind: millimetres('air behind: room at the rim less the mounting depth'),
	meets: listOf(z.string(), 'what its body meets'),
};

const driver = fieldsOf<Of<'drivers'>>()(framed);

const radiator = fieldsOf<Of<'radiators'>>()({
	...framed,
	name: saying('passive radiator'),
	own: inHertz('its cone in free air, no mass added').nullable(),
	loaded: inHertz('its cone in free air with the added mass').nullable(),
	added: fromGrams('to be fixed to its cone').nullable(),
	tuning: inHertz('with the others of its chamber and the air in it').nullable(),
});

const vent = fieldsOf<Of<'vents'>>()({
	name: saying('vent'),
	kind: oneOf(['round', 'slot'], 'round tube or slot'),
	chamber: howMany('chamber it belongs to, its tube lies in'),
	joins: howMany('chamber at its other end, of a tube through a divider').nullable(),
	count: howMany('how many alike'),
	size: listOf(millimetres('diameter; or slot height, then width'), 'clear inside'),
	area: inCm2('all together'),
	length: millimetres('to be cut'),
	acting: millimetres('with the end correction'),
	correction: z.strictObject({
		name: saying('which end correction'),
		radii: pure('added, in radii of the vent'),
	}),
	tuning: inHertz(
		'with the vents that share the chamber; null of one through a divider',
	).nullable(),
	bent: yesNo('is it bent'),
	legs: listOf(
		millimetres('along its middle, corner to corner, the first from the outer face'),
		'of a slot, leg by leg; none of a tube',
	),
	clear: millimetres('free at the inner end'),
	clearWanted: millimetres('wanted there'),
	speed: pure('peak air speed, m/s').nullable(),
	speedWord: saying('what that means').nullable(),
	leastArea: inCm2('least area for what the drivers move, by Small').nullable(),
	notes: listOf(z.string(), 'what is told beside it'),
});

const fit = fieldsOf<BoxFigures['fit']>()({
	wrapped: sizes3('outside with its cloth'),
	cloth: millimetres('loose thickness of the cloth'),
	inSpace: listOf(z.string(), 'what sticks out of the space, in words'),
	fits: yesNo('into its space; null without one').nullable(),
	passes: yesNo('through the opening; null without one').nullable(),
	turn: saying('how to hold it on the way through').nullable(),
});

/** Places of braces, dividers and the like, and their placing lines, are figures of a board. */
const figures = fieldsOf<BoxFigures>()({
	profile: z
		.strictObject({
			outer: outlineOf('outside'),
			inner: outlineOf('inside'),
			keys: listOf(z.string(), 'board of each side'),
		})
		.nullable()
		.describe('side profile from the right end, front on the left; null for a tapered box'),
	outside: sizes3('outside of the boards'),
	inside: sizes3('inside of the boards'),
	leans: listOf(
		fieldsOf<Of<'leans'>>()({
			board: saying('which board'),
			angle: inDegrees('its lean'),
			from: oneOf(['upright', 'level', 'square'], 'counted from'),
		}),
		'boards that are not square',
	),
	boards: listOf(board, 'boards where they stand'),
	seams: listOf(seam, 'where boards meet'),
	chambers: listOf(chamber, 'volumes, chamber by chamber'),
	solved: fieldsOf<NonNullable<BoxFigures['solved']>>()({
		dimension: oneOf(['width', 'height', 'depth'], 'the dimension that was worked out'),
		exact: millimetres('as it comes out'),
		rounded: millimetres('to the mark of the ruler the plan goes by'),
		wanted: inLitres('net volume wanted'),
		gives: inLitres('net volume the rounded size gives'),
	}).nullable(),
	drivers: listOf(driver, 'room of each driver'),
	radiators: listOf(radiator, 'room and tuning of each passive radiator'),
	vents: listOf(vent, 'vents'),
	rods: listOf(
		fieldsOf<Of<'rods'>>()({
			name: saying('rod'),
			diameter: millimetres('diameter'),
			length: millimetres('to be cut'),
			mass: inKg('this rod'),
			place: spans,
		}),
		'rods',
	),
	responses: listOf(response, 'of every chamber whose drivers have their data'),
	gravity: datum.nullable().describe('centre of gravity of the loaded box'),
	tieDowns: listOf(
		fieldsOf<Of<'tieDowns'>>()({
			name: saying('name'),
			board: saying('the board it is on'),
			place: datum,
			hole: millimetres('diameter of its hole').nullable(),
		}),
		'where it is held to the vehicle; what each must bear is not worked out',
	),
	placed: listOf(
		fieldsOf<Of<'placed'>>()({
			...{ key: saying('which board'), label: saying('its mark'), name: saying('name') },
			...spanFields,
		}),
		'boards inside',
	),
	fit,
	assembly: listOf(
		fieldsOf<Of<'assembly'>>()({
			text: saying('what is done'),
			seams: listOf(z.string(), 'letters of the seams closed'),
			glued: inMm2('glued in this step'),
			screws: howMany('screws in this step'),
			apart: millimetres('between screws, about; 0 where there are none'),
		}),
		'in order',
	),
	glued: inMm2('all seams of one box'),
	screws: howMany('screws of one box'),
	brads: howMany('brads of one box'),
	bead: millimetres('sealant along the inside seams'),
	mass: inKg('boards and rods'),
	loadedMass: inKg('with drivers in'),
	persons: howMany('persons to lift it: two from 23 kg on'),
});

export const boxFields = z.strictObject({
	id: saying('mark of the box'),
	name: saying('name'),
	count: howMany('how many are made'),
	mass: inKg('finished, without drivers'),
	litres: listOf(inLitres('net'), 'net volume of each chamber'),
	figures: figures.optional().describe('absent where no box can be made of what was asked'),
});

export function boxFile({ id, name, mass, figures }: BoxPlan, count: number): object {
	const litres = figures?.chambers.map((c) => c.net) ?? [];
	return { id, name, count, mass, litres, figures };
}
