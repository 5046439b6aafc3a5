export {
	entryOf,
	leaveOut,
	pathInFile,
	removeField,
	setField,
	shorten,
	type Sources,
} from './leave-out';
export { nearest } from './nearest';
export { type Places, placesIn } from './places';
export { notesOf, type Path, pathText, type Problem, saidOnce, troublesOf } from './problem';
export { textsIn } from './texts';
export { inside, valueAt } from './value-at';
