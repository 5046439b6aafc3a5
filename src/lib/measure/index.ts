export { printAngle } from './angle';
export {
	type Length,
	mm,
	snap,
	ticks,
	TICKS_PER_INCH,
	TICKS_PER_MM,
	toInches,
	toMm,
} from './length';
export { around, lastOf, nth, theOne } from './lists';
export { massIn, roundMass, showMass } from './mass';
export {
	majorMoney,
	minorUnits,
	money,
	type Money,
	plainMoney,
	printMoney,
	sumMoney,
} from './money';
export { readLength } from './read-length';
export type { Hand, Reading } from './reading';
export {
	answeringRuler,
	handOf,
	printForBench,
	printLength,
	type Ruler,
	sayLeast,
	sayLength,
	sayLengths,
	sayMost,
	sayRange,
	showLength,
	UNITS,
	wholeMost,
	writeLength,
} from './ruler';
export { fromLitres, sayVolume, showVolume, toLitres, volumeUnit } from './volume';
export { wholeShares } from './whole-shares';
