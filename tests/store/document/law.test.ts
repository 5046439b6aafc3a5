import { fc, test } from '@fast-check/vitest';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { likeBefore } from '../../../src/lib/store/document/alike';
import { fileIn, seedOf, writeFile } from '../../../src/lib/store/document/seed';
import { SharedDocument } from '../../../src/lib/store/document/shared-document';
import { joined, takeBack } from '../../../src/lib/store/document/take-back';
import { runs } from '../../depth';

/** Names that break careless code, among those the shape of a job knows. */
const name = fc.oneof(
	fc.constantFrom('id', 'kind', 'by', 'shape', 'vents', 'corners', 'outline', 'parts', 'ticked'),
	fc.constantFrom(
		'__proto__',
		'constructor',
		'prototype',
		'',
		'.',
		'@',
		'^',
		'[',
		'#',
		'a.b',
		':x',
	),
	fc.string({ unit: 'binary', maxLength: 6 }),
	fc.constantFrom('\ud800', '\udfff\ud800', 'ﬀ', 'é', 'e\u0301', '\u0000', 'length', 'toString'),
);
const scalar = fc.oneof(
	fc.constantFrom('round', 'slot', 'P1', 'P2', '', null, true, 0, 1e300, 5e-324),
	fc.double({ noNaN: true, noDefaultInfinity: true }).map((n) => (Object.is(n, -0) ? 0 : n)),
	fc.string({ unit: 'binary', maxLength: 8 }),
	fc.constant('\ud800 lone'),
);
const { json } = fc.letrec<{ json: unknown }>((tie) => ({
	json: fc.oneof(
		{ maxDepth: 5, depthSize: 'small' },
		scalar,
		fc.array(tie('json'), { maxLength: 5 }),
		fc.dictionary(name, tie('json'), { maxKeys: 6, noNullPrototype: true }),
		fc.array(fc.dictionary(name, tie('json'), { maxKeys: 4, noNullPrototype: true }), {
			maxLength: 5,
		}),
		fc.dictionary(
			name,
			fc.uniqueArray(fc.nat(40)).map((l) => l.sort((a, b) => a - b)),
		),
	),
}));
const file = fc.dictionary(name, json, { maxKeys: 6, noNullPrototype: true });

function fresh(content?: unknown): SharedDocument {
	const doc = new SharedDocument();
	if (content !== undefined) doc.take(seedOf(content));
	return doc;
}
/** Objects with a field `__proto__` are told apart, which `toEqual` does not. */
const told = (value: unknown): string => JSON.stringify(sorted(value)) ?? 'undefined';
function sorted(value: unknown): unknown {
	if (Array.isArray(value)) return value.map(sorted);
	if (typeof value !== 'object' || value === null) return value;
	return Object.entries(value)
		.sort(([a], [b]) => (a < b ? -1 : 1))
		.map(([key, inside]) => [key, sorted(inside)]);
}

describe('a document holds any plain file', () => {
	test.prop([json], { numRuns: runs(1000) })('as it was written', (value) => {
		expect(told(fileIn(fresh(value)))).toBe(told(value));
	});

	test.prop([fc.array(json, { minLength: 2, maxLength: 5 })], { numRuns: runs(600) })(
		'after any changes, with the last known or not',
		(values) => {
			const [knowing, blind] = [fresh(), fresh()];
			let before: unknown;
			for (const value of values) {
				writeFile(knowing, before, value);
				writeFile(blind, undefined, value);
				expect(told(fileIn(knowing))).toBe(told(value));
				expect(told(fileIn(blind))).toBe(told(value));
				before = value;
			}
		},
	);

	test.prop([json, json], { numRuns: runs(600) })('and gives back what it was', (one, two) => {
		const doc = fresh(one);
		const edits = writeFile(doc, fileIn(doc), two);
		const again = takeBack(doc, edits);
		expect(told(fileIn(doc))).toBe(told(one));
		takeBack(doc, again);
		expect(told(fileIn(doc))).toBe(told(two));
	});

	test.prop([json, json, json], { numRuns: runs(300) })(
		'two goes taken back as one',
		(one, two, three) => {
			const doc = fresh(one);
			const first = writeFile(doc, fileIn(doc), two);
			const second = writeFile(doc, fileIn(doc), three);
			takeBack(doc, joined(first, second));
			expect(told(fileIn(doc))).toBe(told(one));
		},
	);

	test.prop([json, json], { numRuns: runs(300) })(
		'what is alike stays the same object, and nothing changes by that',
		(one, two) => {
			const like = likeBefore(one, two);
			expect(told(like)).toBe(told(two));
			expect(likeBefore(one, structuredClone(one))).toBe(one);
		},
	);

	const samples = readdirSync('shared/jobs').filter((path) => path.endsWith('.json'));
	it.each(samples)('%s', (path) => {
		const job: unknown = JSON.parse(readFileSync(`shared/jobs/${path}`, 'utf8'));
		const doc = fresh(job);
		expect(fileIn(doc)).toEqual(job);
		expect(likeBefore(job, fileIn(doc))).toBe(job);
		expect(writeFile(doc, fileIn(doc), structuredClone(job))).toEqual([]);
		expect(seedOf(structuredClone(job))).toEqual(seedOf(job));
	});

	test.prop([file], { numRuns: runs(200) })('taken over twice is taken over once', (content) => {
		const doc = fresh(content);
		doc.take(seedOf(structuredClone(content)));
		expect(told(fileIn(doc))).toBe(told(content));
	});
});

describe('windows that merge', () => {
	/**
	 * An edit as a screen makes one: a field of a thing, a list put in order, one more, one less.
	 */
	const edit = fc.record({
		who: fc.nat(2),
		what: fc.constantFrom('field', 'move', 'add', 'take', 'form', 'tick', 'undo', 'hear'),
		a: fc.nat(9),
		b: fc.nat(9),
		text: fc.constantFrom('x', 'y', 'z'),
	});

	interface Edit {
		readonly what: string;
		readonly a: number;
		readonly b: number;
		readonly text: string;
	}
	interface Job {
		readonly parts: readonly { readonly id: string; readonly [field: string]: unknown }[];
		readonly vents: readonly Record<string, unknown>[];
		readonly ticked: Readonly<Record<string, readonly number[]>>;
	}
	const START: Job = {
		parts: ['P1', 'P2', 'P3', 'P4'].map((id) => ({ id, length: 1, note: { a: 1 } })),
		vents: [{ kind: 'round', diameter: 100 }],
		ticked: {},
	};

	function edited(job: Job, { what, a, b, text }: Edit): Job {
		const { parts } = job;
		const i = parts.length === 0 ? 0 : a % parts.length;
		const part = parts[i];
		if (what === 'tick') return { ...job, ticked: ticked(job.ticked, `m/${text}`, a + 1) };
		if (what === 'form')
			return {
				...job,
				vents: [a % 2 ? { kind: 'slot', gap: b } : { kind: 'round', diameter: b }],
			};
		if (what === 'add')
			return {
				...job,
				parts: parts.toSpliced(i, 0, { id: `N${a}`, length: b, note: { a: text } }),
			};
		if (!part) return job;
		if (what === 'take') return { ...job, parts: parts.toSpliced(i, 1) };
		if (what === 'move')
			return { ...job, parts: parts.toSpliced(i, 1).toSpliced(b % parts.length, 0, part) };
		return { ...job, parts: parts.with(i, { ...part, [text]: b }) };
	}

	function ticked(now: Job['ticked'], key: string, n: number): Job['ticked'] {
		const cuts = new Set(now[key]);
		if (!cuts.delete(n)) cuts.add(n);
		const rest = Object.fromEntries(Object.entries(now).filter(([name]) => name !== key));
		return cuts.size === 0 ? rest : { ...rest, [key]: [...cuts].sort((a, b) => a - b) };
	}

	test.prop([fc.array(edit, { minLength: 1, maxLength: 40 }), fc.infiniteStream(fc.nat())], {
		numRuns: runs(600),
	})('come to the same job in whatever order they hear of each other', (edits, chance) => {
		const docs = [fresh(START), fresh(START), fresh(START)];
		const sent: { readonly from: number; readonly update: Uint8Array }[] = [];
		const steps: { readonly who: number; readonly edits: ReturnType<typeof writeFile> }[] = [];
		const heard = docs.map(() => new Set<number>());
		docs.forEach((doc, from) =>
			doc.onUpdate((update, by) => {
				if (by === 'here') sent.push({ from, update });
			}),
		);
		const hear = (who: number, count: number): void => {
			const open = sent.map((_, i) => i).filter((i) => !heard[who]!.has(i));
			for (let n = 0; n < count && open.length > 0; n++) {
				const [i] = open.splice((chance.next().value ?? 0) % open.length, 1);
				heard[who]!.add(i!);
				docs[who]!.take(sent[i!]!.update);
			}
		};
		for (const step of edits) {
			const doc = docs[step.who]!;
			if (step.what === 'hear') hear(step.who, step.a);
			else if (step.what === 'undo') {
				const last = steps.findLastIndex(({ who }) => who === step.who);
				if (last >= 0) takeBack(doc, steps.splice(last, 1)[0]!.edits);
			} else {
				const before = fileIn(doc) as Job;
				const after = edited(before, step);
				steps.push({ who: step.who, edits: writeFile(doc, before, after) });
				expect(told(fileIn(doc))).toBe(told(after));
			}
		}
		docs.forEach((_, who) => hear(who, sent.length));
		const [one, ...others] = docs.map((doc) => told(fileIn(doc)));
		for (const other of others) expect(other).toBe(one);
		for (const part of (fileIn(docs[0]!) as Job).parts) expect(Object.keys(part)).toContain('id');
		for (const vent of (fileIn(docs[0]!) as Job).vents) {
			expect(Object.keys(vent).sort()).toEqual(
				vent['kind'] === 'slot' ? ['gap', 'kind'] : ['diameter', 'kind'],
			);
		}
	});
});
