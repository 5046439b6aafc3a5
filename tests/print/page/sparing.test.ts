import { describe, expect, it } from 'vitest';
import { type Block, type Leaf, pageArea, setPages, sparing } from '../../../src/lib/print/page';
import { plan } from '../../../src/lib/plan';
import { samples } from '../../plan/samples';

const PAPER = { size: 'a4' } as const;
const FULL = pageArea(PAPER).height;
const made = await plan(samples.find(({ name }) => name === 'empty.json')!.file, { seed: 1 });

const drawn = (height: number): Block => ({
	height,
	marks: [{ kind: 'text', x: 0, y: 3, text: String(height), size: 3 }],
});
const leaf = (name: string, share: number, instead?: Leaf['instead']): Leaf => ({
	...{ name, title: name, paper: PAPER, blocks: [drawn(share * FULL)] },
	...(instead && { instead }),
});
const smaller = (share: number) => () => [drawn(share * FULL)];
const heights = (leaves: readonly Leaf[]): number[] =>
	leaves.map(({ blocks }) => Math.round((blocks[0]!.height / FULL) * 100));

describe('leaves told another way', () => {
	it('are so where that spares a page', () => {
		const leaves = [leaf('one', 0.6), leaf('two', 0.6, smaller(0.3))];
		expect(setPages(leaves)).toHaveLength(2);
		expect(heights(sparing(made, leaves))).toEqual([60, 30]);
		expect(setPages(sparing(made, leaves))).toHaveLength(1);
	});

	it('stay as they were where it spares none', () => {
		const leaves = [leaf('one', 0.6), leaf('two', 0.9, smaller(0.5))];
		expect(sparing(made, leaves)).toEqual(leaves);
	});

	it('are no more than it takes, of two either of which would do', () => {
		const leaves = [leaf('one', 0.6, smaller(0.3)), leaf('two', 0.6, smaller(0.3))];
		const found = heights(sparing(made, leaves)).sort((a, b) => a - b);
		expect(found).toEqual([30, 60]);
	});

	it('are both, where one alone spares nothing', () => {
		const leaves = [leaf('one', 0.7, smaller(0.45)), leaf('two', 0.7, smaller(0.45))];
		expect(heights(sparing(made, leaves))).toEqual([45, 45]);
	});

	it('stay as they were where the other way cannot be drawn', () => {
		const broken = (): readonly Block[] => {
			throw new Error('not this way');
		};
		const leaves = [leaf('one', 0.6), leaf('two', 0.6, broken)];
		expect(sparing(made, leaves)).toEqual(leaves);
	});
});

describe('the paper of a letter', () => {
	it('reaches lower than that of a page with a title block, and within its margin', () => {
		const letter = pageArea({ ...PAPER, letter: true });
		expect(letter.height).toBeGreaterThan(FULL + 15);
		// The line with the page's number: 2.8 mm letters, 2 mm over the margin of 10.
		expect(letter.y + letter.height).toBeLessThan(297 - 10 - 2 - 2.8);
	});
});
