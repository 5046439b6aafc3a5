import type { Random } from '../../../lib/nest';
import { seedOf, SharedDocument } from '../../../lib/store';
import type { JobTexts } from './job-cases';
import { mutateTree } from './mutate';
import { pick, strangeText } from './strange';

/*
 * What another device might send to be merged: the edits of a strange job, registers nobody here
 * writes, and bytes torn on the way. A case is the document as it stands and the update, as text,
 * so that it can be left as a file.
 */

/** A document and what is to be merged into it, both as base64. */
export interface Merge {
	readonly stands: string;
	readonly update: string;
	/** Changed on the way: it may then claim to be what stands and say something else. */
	readonly isTorn: boolean;
}

/** What a register may say that no planner wrote. */
const REGISTERS: readonly string[] = [
	...[
		'',
		'=',
		'[',
		'#',
		'{',
		'{slot',
		'{../',
		'=NaN',
		'=1e999',
		'=null',
		'={',
		'=[]',
		'=[[[[',
		'?',
	],
	...[
		'="\\u0000"',
		'={"__proto__":{"polluted":1}}',
		`=${'['.repeat(5000)}`,
		`="${'x'.repeat(9000)}"`,
	],
];
/** Letters of a job that is still made an update of: a change can double it over and over. */
const LONGEST = 200_000;
/** Updates that come torn, of a hundred. */
const TORN = 40;

/** The bytes of a merge as its text holds them. */
export const bytesIn = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'base64'));

export function mergeCase(jobs: JobTexts, dice: Random): string {
	const job = JSON.parse(
		pick(jobs[pick(['boxes', 'panels', 'parts'] as const, dice)], dice),
	) as object;
	const stands = seedOf(job);
	const update = dice.int(3) === 0 ? strangeJob(job, dice) : strangeEdits(stands, dice);
	const isTorn = dice.int(100) < TORN;
	const sent = isTorn ? torn(update, dice) : update;
	const text = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64');
	return JSON.stringify({ stands: text(stands), update: text(sent), isTorn } satisfies Merge);
}

/** The whole of another job that was made of this one, as if it were the same. */
function strangeJob(job: object, dice: Random): Uint8Array {
	const tree = structuredClone(job) as Record<string, unknown>;
	mutateTree(tree, pick([1, 3, 10], dice), dice);
	return seedOf(JSON.stringify(tree).length > LONGEST ? job : tree);
}

/** Registers of the job written, emptied and hung from each other against all order. */
function strangeEdits(stands: Uint8Array, dice: Random): Uint8Array {
	const doc = new SharedDocument(1 + dice.int(1e6));
	doc.take(stands);
	const before = doc.standing();
	const maps = doc.maps();
	for (let n = 1 + dice.int(8); n > 0; n--) {
		const map = dice.int(8) ? pick(maps, dice) : strangeText(dice);
		const keys = doc.keys(map);
		const key = keys.length > 0 && dice.int(8) ? pick(keys, dice) : strangeText(dice);
		doc.put(map, key, registerFor(doc, maps, dice));
	}
	const update = doc.lacking(before) ?? doc.whole();
	doc.close();
	return update;
}

function registerFor(doc: SharedDocument, maps: readonly string[], dice: Random): string | null {
	switch (dice.int(5)) {
		case 0:
			return null;
		case 1:
			return `=${JSON.stringify(strangeText(dice))}`;
		case 2: {
			const map = pick(maps, dice);
			const keys = doc.keys(map);
			return keys.length > 0 ? doc.register(map, pick(keys, dice)) : null;
		}
		default:
			return pick(REGISTERS, dice);
	}
}

function torn(update: Uint8Array, dice: Random): Uint8Array {
	let bytes = [...update];
	for (let n = 1 + dice.int(4); n > 0; n--) {
		const at = dice.int(bytes.length + 1);
		const many = 1 + dice.int(12);
		switch (dice.int(4)) {
			case 0:
				bytes = bytes.slice(0, at);
				break;
			case 1:
				bytes.splice(at, 1, dice.int(256));
				break;
			case 2:
				bytes.splice(at, many);
				break;
			default:
				bytes.splice(
					at,
					0,
					...Array.from({ length: many }, () => pick([0, 127, 128, 255, dice.int(256)], dice)),
				);
		}
	}
	return Uint8Array.from(bytes);
}
