import { mm, type Ruler, sayLength, sayRange, sayVolume, TICKS_PER_MM } from '../../measure';
import { inside } from '../problems';
import type { z } from '../zod';

/**
 * The limits of a field are told in millimetres and litres, which a file counts in; where the job
 * measures in something else, they are told in that.
 * @returns null where the words of the issue do as they are
 */
export function reachWords(
	issue: z.core.$ZodIssue,
	seen: unknown,
	ruler: Ruler | null,
): readonly [what: string, fix: string] | null {
	if (issue.code !== 'custom' || ruler === null || ruler.unit === 'mm') return null;
	const lengths = limitsIn(issue.params, 'lengths');
	if (lengths)
		return [
			`${numberOr(seen, (n) => sayLength(n * TICKS_PER_MM, ruler))} is out of reach.`,
			`Give a length from ${sayRange(mm(lengths[0]), mm(lengths[1]), ruler)}.`,
		];
	const litres = ruler.unit === 'in' && limitsIn(issue.params, 'litres');
	if (!litres) return null;
	const [low, high] = litres.map((l) => sayVolume(l, ruler));
	return [
		`${numberOr(seen, (n) => sayVolume(n, ruler))} is out of reach.`,
		`Give a volume from ${low} to ${high}.`,
	];
}

function limitsIn(params: unknown, of: 'lengths' | 'litres'): readonly [number, number] | null {
	const limits = inside(params, of);
	return Array.isArray(limits) ? (limits as [number, number]) : null;
}

/** A number is in the unit of the file; a text says its own. */
const numberOr = (seen: unknown, say: (n: number) => string): string =>
	typeof seen === 'number' ? say(seen) : `"${String(seen).slice(0, 40)}"`;
