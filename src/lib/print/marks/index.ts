export { arrowhead } from './arrowhead';
export { callouts, type Named } from './callouts';
export { dimension, FIGURE } from './dimension';
export { fitLabel, type Label, shortName } from './label-fit';
export { LabelSlots, placesRound } from './label-slots';
export { lain } from './lain';
export { NAP_LENGTH, napArrow } from './nap-arrow';
export { running, runningDepth } from './running';
export { roomOf, runningAxes, type RunningPlaces } from './running-axes';
export { scaleBar } from './scale-bar';
export { scaleText, standardScale } from './scales';
export { spread } from './spread';
export {
	balloon,
	boxOf,
	centreMark,
	openLine,
	outlineMark,
	overall,
	type Stage,
	stageFor,
	TEXT,
	words,
} from './stage';
