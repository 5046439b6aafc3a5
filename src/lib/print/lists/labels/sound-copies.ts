import type { Plan } from '../../../plan';

/**
 * The pieces of a part or blank that are to carry a label, those that were spoiled left out: 0 for
 * one that was cut at the first go, else the how-manieth it is of those cut again.
 */
export function soundCopies(
	{ boards, cloths }: Pick<Plan, 'boards' | 'cloths'>,
	{ id, count }: { readonly id: string; readonly count: number },
): number[] {
	const laid = [
		...boards.flatMap(({ answer, sources }) =>
			answer.layouts.map(({ placed }, i) => ({
				placed,
				spoiled: [...(sources[i]?.spoiled ?? []), ...(sources[i]?.misfit ?? [])],
			})),
		),
		...cloths
			.flatMap((c) => c.rolls)
			.map(({ answer, pulled }) => ({ placed: answer.placed, spoiled: pulled?.spoiled ?? [] })),
	];
	if (laid.every(({ spoiled }) => spoiled.length === 0))
		return Array.from({ length: count }, () => 0);
	const mine = laid.flatMap(({ placed, spoiled }) =>
		placed.flatMap((p, i) =>
			p.id === id ? [{ copy: p.copy, isSpoiled: spoiled.includes(i) }] : [],
		),
	);
	const first = Array.from({ length: count }, () => 0);
	if (!mine.some((p) => p.isSpoiled)) return first;
	const sound = mine.filter((p) => !p.isSpoiled).sort((a, b) => a.copy - b.copy);
	const numbers = sound.map(({ copy }) => Math.max(0, copy + 1 - count));
	// What is on no sheet yet is cut again as well, after all that are.
	const next = Math.max(0, ...mine.map(({ copy }) => copy + 1 - count));
	const missing = Math.max(0, count - numbers.length);
	return [...numbers, ...Array.from({ length: missing }, (_, i) => next + 1 + i)].slice(0, count);
}
