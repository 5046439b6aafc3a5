export { importShape } from './import-shape';
export {
	findPaper,
	type FoundPaper,
	photographedPaperOf,
	type PictureReading,
	readPicture,
	type Squared,
} from './photo';
