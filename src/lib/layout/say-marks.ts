import type { Part } from '../design';

/**
 * A sentence of the nest, which speaks of piece ids, with the marks and names that a person knows.
 * Longer ids first: one may begin like another.
 */
export function sayMarks(parts: readonly Part[], text: string): string {
	const known = [...parts].sort((a, b) => b.id.length - a.id.length);
	return known.reduce((said, { id, label, name }) => {
		if (!said.includes(id)) return said;
		return said.replaceAll(id, label === name ? label : `${label} ${name}`);
	}, text);
}
