export { callouts, type Named } from './callouts';
export { arrowhead } from './arrowhead';
export { dimension } from './dimension';
export { running } from './running';
export { spread } from './spread';
export { fitLabel, type Label, shortName } from './label-fit';
export { LabelSlots } from './label-slots';
export { NAP_LENGTH, napArrow } from './nap-arrow';
export { roomOf, runningAxes, type RunningPlaces } from './running-axes';
export { scaleBar } from './scale-bar';
export {
	balloon,
	boxOf,
	centreMark,
	Labels,
	openLine,
	outlineMark,
	overall,
	scaleText,
	type Stage,
	stageFor,
	TEXT,
	words,
} from './stage';
