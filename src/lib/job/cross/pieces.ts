import type { Job } from '../job';
import type { Path } from '../problems';
import type { Fault } from './fault';

/**
 * More pieces than these are not laid out in one go: a search over them takes minutes and
 * gigabytes.
 */
const MOST_PIECES = 12000;
/** The fewest boards there are to a box. */
const BOARDS = 4;

interface Counted {
	readonly path: Path;
	readonly name: string;
	/** At least so many, before anything is designed. */
	readonly pieces: number;
}

/**
 * Things that bring more pieces than can be laid out together: those that would are left out, the
 * rest is planned.
 */
export function tooMany({ boxes, panels, parts }: Job): Fault[] {
	const counted: Counted[] = [
		...boxes.map(({ name, count }, i) => ({
			path: ['boxes', i],
			name,
			pieces: count * BOARDS,
		})),
		...panels.map(({ name, count, pair }, i) => ({
			path: ['panels', i],
			name,
			pieces: count * (pair === 'both' ? 2 : 1),
		})),
		...parts.map(({ id, name, count }, i) => ({
			path: ['parts', i],
			name: name ?? id,
			pieces: count,
		})),
	];
	let sum = 0;
	return counted.flatMap(({ path, name, pieces }): Fault[] => {
		if (sum + pieces <= MOST_PIECES) {
			sum += pieces;
			return [];
		}
		return [{ problem: refused(path, name, pieces, sum), leavesOut: path }];
	});
}

function refused(path: Path, name: string, pieces: number, before: number): Fault['problem'] {
	const after = before === 0 ? '' : ` after the ${before} before it`;
	return {
		path: [...path, 'count'],
		kind: 'stop',
		what: `${name} comes to ${pieces} pieces or more${after}; a job holds at most ${MOST_PIECES}. It is left out.`,
		fix: `Give fewer, or plan the rest in a job of its own.`,
	};
}
