import type { BoxFigures } from '../design';
import { z } from '../job';
import {
	fieldsOf,
	howMany,
	inDecibels,
	inHertz,
	inMetresASecond,
	inPlainMm,
	inWatts,
	listOf,
	oneOf,
	pure,
} from './units';

type Response = BoxFigures['responses'][number];

const point = fieldsOf<Response['points'][number]>()({
	hertz: inHertz('frequency'),
	level: inDecibels('over the pass band'),
	cone: inPlainMm('how far the cone goes, one way').nullable(),
	air: inMetresASecond('fastest air in a vent, peak').nullable(),
	passive: inPlainMm('how far passive radiators go, one way').nullable(),
});

export const response = fieldsOf<Response>()({
	chamber: howMany('number of the chamber, from 1'),
	kind: oneOf(['sealed', 'vented', 'passive'], 'what it breathes through'),
	drivers: howMany('drivers in it'),
	power: inWatts('into all of them together'),
	powerBy: oneOf(['asked', 'rated', 'usual'], 'where the power comes from'),
	losses: pure('QL that was taken; null for a sealed chamber').nullable(),
	f3: inHertz('half power'),
	passband: inDecibels('at 1 m in half space, at the power').nullable(),
	xmax: inPlainMm('of the data sheet, one way').nullable(),
	passiveXmax: inPlainMm('of a passive radiator, by its data sheet, one way').nullable(),
	points: listOf(point, 'close together'),
	thirds: listOf(point, 'at thirds of an octave'),
	says: listOf(z.string(), 'what the curve means and leaves out'),
});
