import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { fileIn, seedOf, writeFile } from '../../../src/lib/store/document/seed';
import { FORMS, TAGS } from '../../../src/lib/store/document/shape';
import { SharedDocument } from '../../../src/lib/store/document/shared-document';
import { takeBack } from '../../../src/lib/store/document/take-back';
import { insert, move, put, remove } from '../../../src/lib/ui/state/edits/path';

const START = {
	name: 'Bench',
	parts: [
		{ id: 'A', length: 100, width: 50 },
		{ id: 'B', length: 200, width: 60 },
		{ id: 'C', length: 300, width: 70 },
	],
	boxes: [{ id: 'box', vents: [] as unknown[], shape: { kind: 'cube', height: 10 } }],
	stock: { offcuts: [] as unknown[] },
	ticked: {},
};
type File = typeof START;
type Alter = (file: File) => File;

/** Two windows that each make a change unaware of the other's, and then hear of it. */
function merged(one: Alter, two: Alter): File {
	const docs = [new SharedDocument(7), new SharedDocument(9)];
	for (const doc of docs) doc.take(seedOf(START));
	docs.forEach((doc, i) => writeFile(doc, fileIn(doc), (i === 0 ? one : two)(START)));
	const [a, b] = docs.map((doc) => doc.whole());
	docs[0]!.take(b!);
	docs[1]!.take(a!);
	expect(fileIn(docs[1]!)).toEqual(fileIn(docs[0]!));
	return fileIn(docs[0]!) as File;
}
const lengths = (file: File): unknown => file.parts.map(({ id, length }) => [id, length]);

it('an update that takes out nothing at a place is none, and nothing of it is taken in', () => {
	const writer = new SharedDocument(7);
	writer.put('map', 'key', '=1');
	// It ends with the number of writers of whose something was taken out: none.
	const whole = writer.whole();
	expect(whole.at(-1)).toBe(0);
	const takingOut = (clock: number, length: number) =>
		new Uint8Array([...whole.subarray(0, -1), 1, 9, 1, clock, length]);
	const doc = new SharedDocument(8);
	const told: unknown[] = [];
	doc.onUpdate((update) => told.push(update));
	expect(() => doc.take(takingOut(3, 0))).toThrow('no writer');
	expect([doc.register('map', 'key'), doc.isEmpty, told]).toEqual([null, true, []]);
	doc.take(takingOut(3, 1));
	expect(doc.register('map', 'key')).toBe('=1');
});

it('different fields of one thing are both kept', () => {
	const file = merged(
		(f) => put(f, ['parts', 1, 'length'], 222),
		(f) => put(f, ['parts', 1, 'width'], 66),
	);
	expect(file.parts[1]).toEqual({ id: 'B', length: 222, width: 66 });
});

it('of the same field one is kept, the same everywhere', () => {
	const file = merged(
		(f) => put(f, ['name'], 'One'),
		(f) => put(f, ['name'], 'Two'),
	);
	expect(['One', 'Two']).toContain(file.name);
});

it('a thing moved here and edited there is moved and edited', () => {
	const file = merged(
		(f) => move(f, ['parts'], 0, 2),
		(f) => put(f, ['parts', 0, 'length'], 111),
	);
	expect(lengths(file)).toEqual([
		['B', 200],
		['C', 300],
		['A', 111],
	]);
});

it('a thing both move stands once', () => {
	const file = merged(
		(f) => move(f, ['parts'], 0, 2),
		(f) => move(f, ['parts'], 0, 1),
	);
	expect(file.parts.map(({ id }) => id).sort()).toEqual(['A', 'B', 'C']);
});

it('two things put into the same place both stand there', () => {
	const file = merged(
		(f) => insert(f, ['parts'], { id: 'N', length: 1, width: 1 }, 1),
		(f) => insert(f, ['parts'], { id: 'M', length: 2, width: 2 }, 1),
	);
	expect(file.parts.map(({ id }) => id).sort()).toEqual(['A', 'B', 'C', 'M', 'N']);
	expect(file.parts[0]?.id).toBe('A');
});

it('the first thing of an empty list, put in by both, is two things', () => {
	const offcut = { id: 'R7', material: 'ply', length: 5, width: 5 };
	const file = merged(
		(f) => insert(f, ['stock', 'offcuts'], offcut),
		(f) => insert(f, ['stock', 'offcuts'], offcut),
	);
	expect(file.stock.offcuts).toEqual([offcut, offcut]); // the reader of the job tells of the mark
});

it('fields of a part both begin are all kept', () => {
	const file = merged(
		(f) => put(f, ['quote', 'terms', 'days'], 14),
		(f) => put(f, ['quote', 'terms', 'place'], 'here'),
	);
	expect(file).toMatchObject({ quote: { terms: { days: 14, place: 'here' } } });
});

it('a thing taken out here is not brought back by an edit or a move there', () => {
	const edited = merged(
		(f) => remove(f, ['parts'], 0),
		(f) => put(f, ['parts', 0, 'length'], 111),
	);
	expect(edited.parts.map(({ id }) => id)).toEqual(['B', 'C']);
	const moved = merged(
		(f) => remove(f, ['parts'], 0),
		(f) => move(f, ['parts'], 0, 2),
	);
	expect(moved.parts.map(({ id }) => id)).toEqual(['B', 'C']);
});

it('of two forms one is kept whole', () => {
	const file = merged(
		(f) => put(f, ['boxes', 0, 'shape'], { kind: 'wedge', front: 1, back: 2 }),
		(f) => put(f, ['boxes', 0, 'shape', 'height'], 12),
	);
	expect(file.boxes[0]?.shape).toEqual({ kind: 'wedge', front: 1, back: 2 });
	const both = merged(
		(f) => put(f, ['boxes', 0, 'shape'], { kind: 'wedge', front: 1, back: 2 }),
		(f) => put(f, ['boxes', 0, 'shape'], { kind: 'barrel', girth: 3 }),
	);
	expect([
		{ kind: 'wedge', front: 1, back: 2 },
		{ kind: 'barrel', girth: 3 },
	]).toContainEqual(both.boxes[0]?.shape);
});

it('cuts ticked at two benches are all ticked', () => {
	const start = put(START, ['ticked', 'ply/x'], [1]);
	const docs = [new SharedDocument(7), new SharedDocument(9)];
	for (const doc of docs) doc.take(seedOf(start));
	writeFile(docs[0]!, start, put(start, ['ticked', 'ply/x'], [1, 3]));
	writeFile(docs[1]!, start, put(start, ['ticked'], {}));
	writeFile(docs[1]!, put(start, ['ticked'], {}), put(start, ['ticked', 'ply/x'], [2]));
	docs[0]!.take(docs[1]!.whole());
	expect(fileIn(docs[0]!)).toMatchObject({ ticked: { 'ply/x': [2, 3] } });
});

it("what is taken back is one's own, and only where it still says so", () => {
	const docs = [new SharedDocument(7), new SharedDocument(9)];
	for (const doc of docs) doc.take(seedOf(START));
	const first = put(put(START, ['parts', 0, 'length'], 1), ['parts', 0, 'width'], 1);
	const mine = writeFile(docs[0]!, START, first);
	docs[1]!.take(docs[0]!.whole());
	const there = fileIn(docs[1]!) as File;
	writeFile(docs[1]!, there, put(put(there, ['parts', 0, 'width'], 2), ['name'], 'There'));
	docs[0]!.take(docs[1]!.whole());
	takeBack(docs[0]!, mine);
	expect((fileIn(docs[0]!) as File).parts[0]).toEqual({ id: 'A', length: 100, width: 2 });
	expect((fileIn(docs[0]!) as File).name).toBe('There');
});

it('a list both begin stays for the other when one takes its own back', () => {
	const docs = [new SharedDocument(7), new SharedDocument(9)];
	for (const doc of docs) doc.take(seedOf(START));
	const begun = docs.map((doc, i) => {
		const file = put(START, ['stock', 'offcuts'], [{ id: `R${i}` }]);
		return writeFile(doc, fileIn(doc), put(file, ['customer'], { [`f${i}`]: 'x' }));
	});
	docs[0]!.take(docs[1]!.whole());
	takeBack(docs[0]!, begun[0]!);
	expect(fileIn(docs[0]!)).toMatchObject({
		stock: { offcuts: [{ id: 'R1' }] },
		customer: { f1: 'x' },
	});
	const again = takeBack(docs[0]!, begun[1]!);
	expect(fileIn(docs[0]!)).toEqual({ ...START, stock: { offcuts: [] } });
	takeBack(docs[0]!, again);
	expect(fileIn(docs[0]!)).toMatchObject({ stock: { offcuts: [{ id: 'R1' }] } });
});

it('a thing taken out and brought back is whole, with what came in meanwhile', () => {
	const docs = [new SharedDocument(7), new SharedDocument(9)];
	for (const doc of docs) doc.take(seedOf(START));
	const mine = writeFile(docs[0]!, START, remove(START, ['parts'], 0));
	writeFile(docs[1]!, START, put(START, ['parts', 1, 'width'], 61));
	docs[0]!.take(docs[1]!.whole());
	takeBack(docs[0]!, mine);
	expect(fileIn(docs[0]!)).toEqual(put(START, ['parts', 1, 'width'], 61));
});

it('an edit of one field is small, and many of one field stay so', () => {
	const job: unknown = JSON.parse(readFileSync('shared/jobs/camper-bench.json', 'utf8'));
	const doc = new SharedDocument();
	doc.take(seedOf(job));
	const seeded = doc.whole().length;
	let [largest, file] = [0, job as File];
	doc.onUpdate((update) => (largest = Math.max(largest, update.length)));
	for (let n = 0; n < 2000; n++) {
		const next = put(file, ['boxes', 0, 'shape', 'height'], n);
		writeFile(doc, file, next);
		file = next;
	}
	expect(largest).toBeLessThan(120);
	expect(doc.whole().length).toBeLessThan(seeded + 400);
});

it('an update that is no update changes nothing', () => {
	const doc = new SharedDocument();
	doc.take(seedOf(START));
	for (const bytes of [[], [255, 255, 255], [1, 1, 1, 1, 9, 9, 9, 9, 9]])
		expect(() => doc.take(new Uint8Array(bytes)), String(bytes)).toThrow();
	expect(fileIn(doc)).toEqual(START);
});

/** The fields of the job's schema in which one of several forms stands, told apart by a tag. */
function formsOfSchema(): Set<string> {
	const schema = JSON.parse(readFileSync('shared/job.schema.json', 'utf8')) as Node;
	const found = new Set<string>();
	const met = new Set<string>();
	walk(schema, '');
	return found;

	function walk(at: Node, name: string): void {
		const node = opened(at);
		const here = `${name} ${JSON.stringify(at)}`;
		if (met.has(here)) return;
		met.add(here);
		const forms = [...(node.oneOf ?? []), ...(node.anyOf ?? [])].map(opened);
		const tags = new Set(forms.flatMap((form) => TAGS.filter((tag) => form.properties?.[tag])));
		if (forms.filter((form) => form.properties).length > 1 && tags.size > 0) found.add(name);
		for (const form of forms) walk(form, name);
		if (node.items) walk(node.items, name);
		for (const [key, inside] of Object.entries(node.properties ?? {})) walk(inside, key);
	}
	function opened(node: Node): Node {
		if (!node.$ref) return node;
		const way = node.$ref.split('/').slice(1);
		return opened(
			way.reduce((at: unknown, key) => (at as Record<string, unknown>)[key], schema) as Node,
		);
	}
}
interface Node {
	readonly $ref?: string;
	readonly oneOf?: readonly Node[];
	readonly anyOf?: readonly Node[];
	readonly items?: Node;
	readonly properties?: Readonly<Record<string, Node>>;
}

it('every choice of forms in the schema of a job is known, and no other', () => {
	const found = formsOfSchema();
	expect(found.size).toBeGreaterThan(8);
	expect([...FORMS].sort()).toEqual([...found].sort());
});
