import type { Numbered } from './find';

/**
 * The text of a file with all these mutants in it, each behind a switch: `mutant__(7)` is true
 * where number 7 is to stand. So the files are read and compiled once for all of them.
 */
export function switched(text: string, mutants: readonly Numbered[]): string {
	return render(text, 0, text.length, mutants);
}

/** Those that lie within a stretch of text, the widest first. */
function render(text: string, from: number, to: number, mutants: readonly Numbered[]): string {
	let out = '';
	let at = from;
	const inside = mutants
		.filter(({ start, end }) => start >= from && end <= to)
		.sort((a, b) => a.start - b.start || b.end - a.end);
	for (let i = 0; i < inside.length;) {
		const widest = inside[i];
		if (!widest) break;
		const { start, end } = widest;
		const same = inside.filter((m) => m.start === start && m.end === end);
		const within = inside.filter((m) => m.start >= start && m.end <= end && !same.includes(m));
		out += text.slice(at, start) + behind(same, render(text, start, end, within));
		at = end;
		i += same.length + within.length;
	}
	return out + text.slice(at, to);
}

function behind(mutants: readonly Numbered[], own: string): string {
	return mutants.reduce(
		(rest, { id, text: instead }) =>
			instead === null
				? `{ if (!mutant__(${id})) { ${rest} } }`
				: `(mutant__(${id}) ? (${instead}) : (${rest}))`,
		own,
	);
}
