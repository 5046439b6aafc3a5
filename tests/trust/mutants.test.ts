import { expect, test } from 'vitest';
import { mutantsOf } from '../../src/setup/trust/mutants/find';
import { switched } from '../../src/setup/trust/mutants/switched';

const TEXT = `export function least(a: number, b: number): number {
	if (a < b) note(a);
	return a < b ? Math.min(a, 3) : b - 1;
}
`;
const mutants = mutantsOf('least.ts', TEXT).map((mutant, id) => ({ ...mutant, id }));

test('the faults a hand might make are found, in the order of the text', () => {
	const told = mutants.map(({ kind, text }) => `${kind}: ${text}`);
	expect(told).toContain('condition: !(a < b)');
	expect(told).toContain('edge: a <= b');
	expect(told).toContain('comparison: a > b');
	expect(told).toContain('statement left out: null');
	expect(told).toContain('swapped name: Math.max(a, 3)');
	expect(told).toContain('plus and minus: b + 1');
	expect(told).toContain('constant: 4.75');
});

test('each stands behind a switch of its own; with none the text does what it did', () => {
	const body = switched(TEXT, mutants)
		.replace('export function least(a: number, b: number): number', 'return function (a, b)')
		.trim();
	const noted: number[] = [];
	let on = -1;
	const least = new Function('mutant__', 'note', body)(
		(id: number) => id === on,
		(n: number) => noted.push(n),
	) as (a: number, b: number) => number;
	expect([least(1, 2), least(9, 2), noted]).toEqual([1, 1, [1]]);
	const changed = mutants.filter(({ id }) => {
		on = id;
		noted.length = 0;
		const seen = JSON.stringify([least(1, 2), least(9, 2), least(2, 2), least(7, 8), noted]);
		on = -1;
		noted.length = 0;
		return seen !== JSON.stringify([least(1, 2), least(9, 2), least(2, 2), least(7, 8), noted]);
	});
	expect(changed.map(({ id }) => id)).toEqual(mutants.map(({ id }) => id));
});

test('a constant works once, and so does all in a file that remembers; a call does not', () => {
	const once = (text: string) => mutantsOf('a.ts', text).map((mutant) => mutant.once);
	expect(once('const FAR = 3;\n')).toEqual([true]);
	expect(once('const far = () => 3;\n')).toEqual([false]);
	expect(once('class Far {\n\tfar = 3;\n}\n')).toEqual([false]);
	expect(once('const kept = new Map();\nconst far = () => 3;\n')).toEqual([true]);
});
