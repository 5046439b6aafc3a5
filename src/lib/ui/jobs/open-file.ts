import { type JobFile, parseJobText } from '../../job';
import { type DeskOpening, newId } from '../state';

/**
 * A job file opened as a job of its own, exactly as it stands: what is wrong with single figures is
 * shown in their fields. A text that is no job file at all is refused in words.
 */
export function fromText(
	text: string,
	name: string,
): { readonly opening: DeskOpening } | { readonly refused: readonly string[] } {
	const read = parseJobText(text);
	if ('problems' in read) {
		return { refused: read.problems.map((p) => `${name}: ${p.what} ${p.fix}`) };
	}
	const { file, twice } = read;
	return { opening: { id: newId(), file: file as JobFile, sharesRack: false, noted: twice } };
}
