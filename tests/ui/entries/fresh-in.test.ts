import { describe, expect, it } from 'vitest';
import type { JobFile, Path } from '../../../src/lib/job';
import { BOX, freshIn, type Field, PANEL } from '../../../src/lib/ui/entries';
import { stopsIn } from '../../../src/lib/ui/entries/try-out';
import { insert, listAt } from '../../../src/lib/ui/state/edits/path';
import { samples } from '../../plan/samples';

/**
 * Lists that are added to with "Add"; a corner of the joints names two boards, which only the
 * person can.
 */
const listsOf = (fields: readonly Field[]): Field[] =>
	fields.filter((f) => f.entry.kind === 'list' && f.key !== 'corners');

/** Beside a vent no passive radiator is worked out, which is said where one is added. */
const vented = (file: JobFile, path: Path): boolean => listAt(file, [...path, 'vents']).length > 0;

describe.each(samples)('after any Add in $name', ({ file }) => {
	const things = [
		...(file.boxes ?? []).map((_, i) => ({ path: ['boxes', i] as const, fields: BOX.fields })),
		...(file.panels ?? []).map((_, i) => ({ path: ['panels', i] as const, fields: PANEL.fields })),
	];

	it('nothing is stopped that was not before', async () => {
		const before = stopsIn(file);
		for (const { path, fields } of things) {
			for (const { key, entry } of listsOf(fields)) {
				if (entry.kind !== 'list' || (key === 'radiators' && vented(file, path))) continue;
				const at = [...path, key];
				const made = await freshIn(file, at, String(key), entry.item);
				expect(stopsIn(insert(file, at, made)), at.join('/')).toBeLessThanOrEqual(before);
			}
		}
	});
});
