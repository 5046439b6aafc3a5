export {
	CEILING,
	leastVentArea,
	QUIET,
	sealed,
	SOUND,
	stuffingCredit,
	ventSpeed,
	volumeForQtc,
} from './acoustics';
export { slotLegs, slotMeets, tubeMeets } from './run-into';
export { sidesAlong, turnsOf } from './slot-legs';
export { clearOf, slotSetups } from './slot-setup';
export { roundSetups } from './tube';
export { type SlotSetup, ventName, type VentSetup } from './vent';
export { tuneRooms, type VentResult } from './vent-result';
