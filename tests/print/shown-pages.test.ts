import { expect, it } from 'vitest';
import { plan } from '../../src/lib/plan';
import { pagesOf } from '../../src/lib/print/output-files';
import { drawingSvg } from '../../src/lib/print/pens/svg';
import { shownPages } from '../../src/lib/print/shown-pages';
import { sample } from '../plan/samples';

const made = await plan(sample('box-slanted-sealed.json'), { effort: 20, seed: 1 });

it('the pages that are shown are those that are printed', () => {
	for (const kind of ['print-pack', 'templates', 'labels', 'quote', 'cost-sheet'] as const) {
		const all = pagesOf(kind, made);
		const { of, pages } = shownPages(kind, made, 0, 1000);
		expect(of).toBe(all.length);
		expect(pages.map((p) => p.name)).toEqual(all.map((p) => p.name));
		expect(pages.map((p) => p.n)).toEqual(all.map((_, i) => i + 1));
		expect(pages[0]?.svg).toBe(drawingSvg(all[0]!, { colours: 'css' }));
	}
});

it('some of them are drawn, and counted from where they stand', () => {
	const { of, pages } = shownPages('print-pack', made, 4, 3);
	expect(pages.map((p) => p.n)).toEqual([5, 6, 7]);
	expect(shownPages('print-pack', made, of - 1, 3).pages).toHaveLength(1);
	expect(shownPages('print-pack', made, of, 3)).toEqual({ of, pages: [] });
	const chosen = { ...made, job: { ...made.job, pages: ['parts' as const] } };
	expect(shownPages('print-pack', chosen, 0, 1).pages[0]?.name).toContain('Parts');
});
