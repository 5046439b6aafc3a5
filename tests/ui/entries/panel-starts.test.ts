import fc from 'fast-check';
import { expect, it } from 'vitest';
import { designAll } from '../../../src/lib/design';
import { type JobFile, placesIn, readJob } from '../../../src/lib/job';
import { freshIn, PANEL } from '../../../src/lib/ui/entries';
import { insert, listAt, put } from '../../../src/lib/ui/state/edits/path';
import { wrapAll } from '../../../src/lib/wrap';
import { runs } from '../../depth';
import { sample } from '../../plan/samples';

/** The rack a newcomer's first job stands on. */
const { stock, shop } = sample('camper-bench.json');

const LISTS = ['layers', 'covers', 'windows', 'devices'] as const;
type Added = (typeof LISTS)[number];

function panelOf(length: number, width: number, cloth: string | null): JobFile {
	const panel = { id: 'panel-1', name: 'Panel 1', material: 'ply-18', cloth };
	return {
		...{ format: 'kerf-and-nap job', version: 2, name: 'New', stock, shop },
		panels: [{ ...panel, opening: { kind: 'rectangle', length, width } }],
	};
}

function problemsOf(file: JobFile): string[] {
	const read = readJob(file);
	const design = designAll(read.job, placesIn(file), read.unsized);
	const cloth = wrapAll(read.job, design, placesIn(file), read.doubtfulCloths);
	return [...read.problems, ...design.problems, ...cloth.panels.flatMap((p) => p.problems)]
		.filter((p) => p.kind !== 'note')
		.map((p) => `${p.path.join('/')}: ${p.what}`);
}

async function withAdded(file: JobFile, list: Added): Promise<JobFile> {
	const entry = PANEL.fields.find((f) => f.key === list)!.entry;
	if (entry.kind !== 'list') throw new Error(`${list} is no list.`);
	const path = ['panels', 0, list];
	const made = await freshIn(file, path, list, entry.item);
	return insert(file, path, made, listAt(file, path).length);
}

async function adds(file: JobFile, lists: readonly Added[]): Promise<void> {
	for (const list of lists) {
		file = await withAdded(file, list);
		expect(problemsOf(file), lists.join()).toEqual([]);
	}
}

/** Sizes from these up to the largest panel of a vehicle. */
const sizes = (length: number, width: number) =>
	[fc.integer({ min: length, max: 1200 }), fc.integer({ min: width, max: 900 })] as const;
const any = fc.constantFrom(...LISTS);
const one = fc.tuple(any);
const two = fc.tuple(any, any);
const piece = fc.constantFrom<readonly Added[]>(['layers', 'covers'], ['covers', 'layers']);
const bare = fc.constant(null);
/** It has to be turned in round each hole: that takes room. */
const cloth = fc.constantFrom('carpet-anthracite', 'vinyl-graphite');

it.each([
	['one thing', 'a bare panel from 100 by 80', sizes(100, 80), bare, one],
	['a piece and a cover', 'a bare panel from 100 by 80', sizes(100, 80), bare, piece],
	['two things', 'a bare panel from 300 by 200', sizes(300, 200), bare, two],
	['one thing', 'a panel in cloth from 300 by 200', sizes(300, 200), cloth, one],
	['two things', 'a panel in cloth from 700 by 500', sizes(700, 500), cloth, two],
])('no problem stands after %s added as it comes to %s', async (_, __, [l, w], wrap, lists) => {
	await fc.assert(
		fc.asyncProperty(l, w, wrap, lists, (...given) => {
			const [length, width, of, what] = given;
			return adds(panelOf(length, width, of), what);
		}),
		{ numRuns: runs(120) },
	);
});

it.each([
	[100, 80],
	[500, 300],
	[1200, 900],
])('a bare panel of %d by %d takes a piece and a cover, and cloth then', async (l, w) => {
	let file = panelOf(l, w, null);
	for (const list of ['layers', 'covers'] as const) file = await withAdded(file, list);
	expect(problemsOf(file)).toEqual([]);
	if (l < 300) return;
	const wrapped = put(file, ['panels', 0, 'cloth'], 'carpet-anthracite');
	expect(problemsOf(wrapped)).toEqual([]);
});
