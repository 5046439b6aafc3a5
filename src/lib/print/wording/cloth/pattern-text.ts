import type { RollLayout } from '../../../layout';
import type { Figures } from '../figures';

/**
 * How the pull off a roll with a pattern is counted, and what the other way takes; '' for a plain
 * cloth.
 */
export function patternText({ pull, lead, pattern }: RollLayout, figures: Figures): string {
	if (!pattern) return '';
	const ways = { counted: 'as counted', whole: 'every cut in whole repeats' } as const;
	const other = ways[pattern.cuts === 'counted' ? 'whole' : 'counted'];
	const start = lead
		? `with up to ${figures.bench(lead)} before the pattern starts`
		: 'begun where the pattern starts';
	return `${ways[pattern.cuts]} ${figures.bench(pull)}, ${start}; ${other} it would be ${figures.bench(pattern.other)}`;
}
