import { random, type Random } from '../../../lib/nest';
import {
	CORNERS,
	CORNER_WORDS,
	DXFS,
	DXF_WORDS,
	LISTS,
	LIST_WORDS,
	SVGS,
	SVG_WORDS,
} from './drawings';
import { jobCase, type JobTexts } from './job-cases';
import { nestCase } from './nest-cases';
import { mergeCase } from './merge-cases';
import { pick } from './strange';
import { tornText } from './torn-text';

/*
 * A case of hostile input by its number alone: what was found is made again by naming the number.
 */

export const KINDS = ['job', 'svg', 'dxf', 'pasted', 'list', 'nest', 'merge'] as const;
export type Kind = (typeof KINDS)[number];
/** Files somebody gives it, or what other devices send to be merged. */
export const SORTS = ['files', 'merges'] as const;
export type Sort = (typeof SORTS)[number];

export interface Case {
	readonly seed: number;
	readonly kind: Kind;
	readonly text: string;
	/** Goes all the way to PDF; the others to plain lists and SVG. */
	readonly paper: boolean;
}

/** How many of a hundred files are of each kind. */
const SHARES: readonly (readonly [Kind, number])[] = [
	['job', 24],
	['nest', 30],
	['svg', 16],
	['dxf', 16],
	['list', 8],
	['pasted', 6],
];
/** One in so many is printed as PDF too. */
const ON_PAPER = 100;

export function hostileCase(seed: number, jobs: JobTexts, sort: Sort = 'files'): Case {
	const dice = random(seed);
	const kind = sort === 'merges' ? 'merge' : kindDrawn(dice);
	return { seed, kind, text: textOf(kind, jobs, dice), paper: seed % ON_PAPER === 0 };
}

function kindDrawn(dice: Random): Kind {
	let draw = dice.int(100);
	for (const [kind, share] of SHARES) {
		draw -= share;
		if (draw < 0) return kind;
	}
	return 'job';
}

function textOf(kind: Kind, jobs: JobTexts, dice: Random): string {
	const times = 1 + dice.int(4);
	switch (kind) {
		case 'job':
			return jobCase(jobs, dice);
		case 'nest':
			return nestCase(dice);
		case 'svg':
			return tornText(pick(SVGS, dice), times, SVG_WORDS, dice);
		case 'dxf':
			return tornText(pick(DXFS, dice), times, DXF_WORDS, dice);
		case 'pasted':
			return tornText(pick(CORNERS, dice), times, CORNER_WORDS, dice);
		case 'merge':
			return mergeCase(jobs, dice);
		case 'list':
			return tornText(pick(LISTS, dice), times, LIST_WORDS, dice);
	}
}
