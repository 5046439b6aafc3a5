import { describe, expect, it } from 'vitest';
import { mm } from '../../../src/lib/measure/length';
import { boardCautions } from '../../../src/lib/cautions/board-cautions';
import { labelPages } from '../../../src/lib/print/lists/labels/label-pages';
import { partsPages } from '../../../src/lib/print/lists/parts-pages';
import { partTemplate } from '../../../src/lib/print/templates/part-template';
import { samplePlan } from '../fixture';
import { wordsOn } from '../words-on';

/** A board 17.6 thick, both bevels at 22 degrees the same way: 17.6 tan 22 = 7.11 mm. */
const plan = (() => {
	const sample = samplePlan();
	const face = { length: mm(980), width: mm(388.09) };
	const shift = { outside: face, inside: face, offset: { length: mm(0), width: mm(7.11) } };
	const parts = sample.parts.map((p) => (p.label === 'B1' ? { ...p, short: face, shift } : p));
	return { ...sample, parts };
})();
const words = (pages: readonly { marks: Parameters<typeof wordsOn>[0] }[]): string =>
	pages.flatMap((p) => wordsOn(p.marks)).join('\n');
const told = (leaves: ReturnType<typeof partsPages>): string =>
	words(leaves.flatMap((leaf) => leaf.blocks));

describe('a board whose bevels lean the same way', () => {
	it('is listed by its blank and both its faces', () => {
		const all = told(partsPages(plan));
		expect(all).toContain('blank 980 × 395.2');
		expect(all).toContain('both faces 980 × 388.1, 7.1 apart');
		expect(all).toContain('sharp edge outside');
		expect(all).not.toContain('LONG outside');
	});

	it('has the same on its label and its pattern', () => {
		const all = words(labelPages(plan));
		for (const say of ['blank 980 × 395.2', 'both faces 980 × 388.1', '7.1 apart'])
			expect(all).toContain(say);
		const part = plan.parts.find((p) => p.label === 'B1')!;
		expect(partTemplate(part).seen).toBe('outside face up, blank round both faces');
	});

	it('is not to be measured at a LONG face', () => {
		const said = boardCautions(plan.job, plan.parts, plan.boards);
		const about = (id: string): readonly string[] => said.find((c) => c.id === id)?.about ?? [];
		const id = `part:${plan.parts.find((p) => p.label === 'B1')!.id}`;
		expect(about('parallel-bevels')).toEqual([id]);
		expect(about('bevel')).not.toContain(id);
	});
});
