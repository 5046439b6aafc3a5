import { z } from '../job';
import type { ReelLength, ReelPlan, RunEnd, RunPlan } from '../runs';
import { fieldsOf, howMany, inPercent, listOf, millimetres, oneOf, saying } from './units';

const endFields = fieldsOf<RunEnd>()({
	name: saying('what it is joined to'),
	extra: millimetres('left for the joint'),
});

export const runFields = fieldsOf<RunPlan>()({
	id: saying('mark'),
	label: saying('what is written on it'),
	name: saying('name'),
	reel: saying('mark of what it is cut from; empty for nothing on the rack'),
	stretches: listOf(
		z.strictObject({ name: saying('where it goes'), length: millimetres('as measured') }),
		'what it is made up of, end to end',
	),
	measured: millimetres('of one: what the stretches come to'),
	slack: inPercent('on that'),
	ends: z.tuple([endFields, endFields]).describe('both ends'),
	cut: millimetres('of one: measured, its slack and both ends, up to the mark of the tape'),
	count: howMany('alike'),
	uncut: oneOf(['', 'no reel', 'too long'], 'why it is cut from nothing; empty where it is'),
});

const lengthFields = fieldsOf<ReelLength>()({
	source: oneOf(['rack', 'buy'], 'it lies on the rack, or is bought'),
	length: millimetres('before anything is cut from it'),
	runs: listOf(z.string(), 'what is written on the runs cut from it'),
	left: millimetres('of it'),
});

export const reelFields = fieldsOf<ReelPlan>()({
	reel: saying('mark on the rack'),
	name: saying('name'),
	need: millimetres('all its runs together'),
	fromRack: millimetres('of that cut from the rack'),
	packs: howMany('packs to buy for the rest'),
	lengths: listOf(lengthFields, 'what is cut from what'),
});
