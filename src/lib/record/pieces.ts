import type { FaceWork, Need, Part } from '../design';
import { z } from '../job';
import type { Blank } from '../wrap';
import {
	fieldsOf,
	howMany,
	inDegrees,
	inKg,
	millimetres,
	inMm2,
	inPercent,
	lineOf,
	listOf,
	oneOf,
	orEndless,
	outlineOf,
	cornersOf,
	pure,
	saying,
	yesNo,
} from './units';

/* What is cut: parts of board and blanks of cloth; and what else the work takes. */

const faceSize = (what: string) =>
	z
		.strictObject({
			length: millimetres('along the grain'),
			width: millimetres('across the grain'),
		})
		.describe(what);

export const partFields = fieldsOf<Part>()({
	id: saying('mark, the same as long as the design is'),
	label: saying('mark written on it'),
	name: saying('name'),
	owner: saying('box, panel or list it belongs to'),
	material: saying('board'),
	thickness: millimetres('measured'),
	count: howMany('how many'),
	length: millimetres('along the grain, as it is cut'),
	width: millimetres('across the grain, as it is cut'),
	short: faceSize('the shorter face where an edge is bevelled').optional(),
	shift: z
		.strictObject({
			outside: faceSize('outside face'),
			inside: faceSize('inside face'),
			offset: faceSize('what the rectangle round both is longer than the longer of them'),
		})
		.optional()
		.describe('where neither face is what is cut'),
	outline: outlineOf('in length x width, from its lower left').optional(),
	holes: listOf(outlineOf('a hole'), 'holes right through'),
	faceWork: listOf(
		fieldsOf<FaceWork>()({
			kind: oneOf(['groove', 'pocket', 'rabbet', 'drill'], 'how it is cut'),
			name: saying('what for'),
			from: oneOf(['near', 'far'], 'the face the drawing looks at, or the one behind it'),
			line: cornersOf('where, of a groove its middle'),
			closed: yesNo('does it join its beginning'),
			width: millimetres('of a groove').optional(),
			depth: millimetres('from its face; absent where what goes in decides').optional(),
		}),
		'cut into a face, in length x width',
	).optional(),
	grain: oneOf(['length', 'any'], 'the grain runs along the length, or does not matter'),
	bevels: listOf(
		fieldsOf<Part['bevels'][number]>()({
			edge: saying('letter of the edge'),
			side: oneOf(['left', 'right', 'bottom', 'top'], 'of the rectangle'),
			tilt: inDegrees('saw tilt from square'),
			mitre: inDegrees('turn of the mitre gauge from square').optional(),
			long: oneOf(['outside', 'inside'], 'the longer face at this edge'),
		}),
		'bevelled edges',
	),
	face: oneOf(['outside', 'inside', 'front', 'back'], 'the face the drawing looks at'),
	show: yesNo('is that face seen in the finished work'),
	routed: millimetres('of edge cut with a router'),
	mass: inKg('one piece'),
	notes: listOf(z.string(), 'what is told beside it'),
});

const girth = (what: string) =>
	fieldsOf<NonNullable<Blank['girth']>['along']>()({
		face: millimetres('across the face'),
		climbs: millimetres('up and down all steps'),
		ends: z.tuple([millimetres('turn-under at one end'), millimetres('turn-under at the other')]),
		total: millimetres('all of it'),
	}).describe(what);

const verdict = fieldsOf<NonNullable<Blank['verdicts']>[number]>()({
	where: saying('which corner or edge'),
	asks: orEndless('per cent', 'what the place asks of the cloth'),
	gives: inPercent('what the cloth gives'),
	takes: yesNo('does the cloth take it'),
	text: saying('the verdict in a sentence'),
	doubt: z
		.strictObject({
			figures: saying('what it comes to'),
			help: saying('what would help'),
			at: listOf(z.union([z.string(), z.number()]), 'where in the panel it can be put right'),
			kind: oneOf(['check', 'note'], 'note where the relief cuts deal with it'),
		})
		.optional(),
});

export const blankFields = fieldsOf<Blank>()({
	id: saying('mark'),
	label: saying('mark written on it'),
	name: saying('name'),
	owner: saying('box or panel it belongs to'),
	covers: saying('what it covers'),
	cloth: saying('cloth'),
	count: howMany('how many'),
	length: millimetres('along the roll'),
	width: millimetres('across the roll'),
	outline: outlineOf('seen from the back, the nap points along x'),
	marks: listOf(
		fieldsOf<Blank['marks'][number]>()({
			kind: saying('fold, slit, notch, window, seam, centre, hole, trim, step or bend'),
			line: lineOf('where'),
			closed: yesNo('does it join its beginning'),
			corner: z.literal(true).optional().describe('a notch mitred at an outside corner'),
		}),
		'what is marked and cut on the back',
	),
	anyWay: yesNo('may it be turned against the nap'),
	lot: saying('blanks of one lot come off one roll'),
	partAt: z
		.strictObject({ x: millimetres('along the roll'), y: millimetres('across the roll') })
		.optional()
		.describe('corner of a part on the whole of a seamed cloth'),
	bonded: inMm2('of board or cloth it is glued to, one face'),
	mass: inKg('of one, as it is cut, windows not yet cut out').optional(),
	foam: inMm2('of foam glued on beneath it, one face').optional(),
	reliefs: z.strictObject({
		notches: howMany('notches'),
		slits: howMany('slits'),
		corners: howMany('wrapped corners'),
	}),
	notes: listOf(z.string(), 'what is told beside it'),
	verdicts: listOf(verdict, 'whether the cloth takes its corners and edges').optional(),
	girth: z
		.strictObject({ along: girth('along the roll'), across: girth('across the roll') })
		.optional(),
});

export const needFields = fieldsOf<Need>()({
	kind: saying('kind of sundry'),
	amount: pure('in the unit the kind is counted in: m2, m, L, pieces or packs'),
	for: saying('what for'),
	of: saying(
		'mark of the sundry it is taken from, where that is not the first of its kind',
	).optional(),
});
