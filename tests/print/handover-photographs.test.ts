import { beforeAll, describe, expect, it } from 'vitest';
import sample from '../../shared/jobs/camper-bench.json';
import { loadFonts } from '../../src/cli/fonts';
import type { JobFile } from '../../src/lib/job/job';
import { plan, type Plan } from '../../src/lib/plan';
import type { Mark, PhotoMark } from '../../src/lib/print/drawing/drawing';
import { drawingSvg } from '../../src/lib/print/pens/svg';
import { handoverPack, shopCardPack } from '../../src/lib/print/pack';
import { pdfFiles } from '../../src/lib/print/output-files';
import { pageArea } from '../../src/lib/print/page/paper';
import { carried, jpeg, photographOf } from '../job/photographs/made-pictures';
import { picturesOnPages, readPdf } from './pdf-reader';
import { textsOverTexts, wordsOn } from './words-on';

const FILE = sample as unknown as JobFile;
let planned: Plan;
beforeAll(async () => (planned = await plan(FILE, { effort: 5 })));

const picture = (i: number): Uint8Array => (i % 3 === 1 ? jpeg(48, 160, i) : jpeg(160, 120, i));
const size = (i: number) =>
	i % 3 === 1 ? { width: 48, height: 160 } : { width: 160, height: 120 };

/** The plan with so many photographs as built, their pictures there but for those at `missing`. */
function withBuilt(
	count: number,
	{ paper = 'a4', missing = [] }: { paper?: 'a4' | 'letter'; missing?: readonly number[] } = {},
): Plan {
	const all = Array.from({ length: count }, (_, i) => i);
	const words = { date: '2026-11-30', of: '', shopCard: false, kind: 'built' as const };
	const photographs = all.map((i) =>
		photographOf(picture(i), { ...words, ...size(i), shows: `View ${i + 1}.` }),
	) as unknown as Plan['job']['photographs'];
	const pictures = carried(...all.filter((i) => !missing.includes(i)).map(picture));
	const { job } = planned;
	return { ...planned, job: { ...job, photographs, pictures, shop: { ...job.shop, paper } } };
}
const photos = (marks: readonly Mark[]): PhotoMark[] => marks.filter((m) => m.kind === 'photo');

describe('photographs on the handover card', () => {
	it.each(
		(['a4', 'letter'] as const).flatMap((paper) =>
			[0, 1, 2, 3, 4, 5, 11, 12].map((count) => ({ paper, count })),
		),
	)('$count on $paper stand apart, within the page, in their proportion', ({ paper, count }) => {
		const pages = handoverPack(withBuilt(count, { paper }));
		const shown = pages.flatMap((page) => photos(page.marks));
		expect(shown).toHaveLength(count);
		const words = pages.flatMap((page) => wordsOn(page.marks)).join(' ');
		for (let i = 0; i < count; i++) expect(words).toContain(`View ${i + 1}.; 2026-11-30`);
		expect(words.includes('As built')).toBe(count > 0);
		const area = pageArea({ size: paper });
		for (const page of pages) {
			expect(textsOverTexts(page.marks)).toEqual([]);
			photos(page.marks).forEach((a, i, all) => {
				expect(a.width / a.height).toBeCloseTo(a.width > a.height ? 160 / 120 : 48 / 160, 6);
				expect(Math.min(a.x, a.y, page.width - a.x - a.width)).toBeGreaterThan(5);
				expect(a.width).toBeLessThanOrEqual(area.width);
				expect(a.y + a.height).toBeLessThan(page.height - 5);
				for (const b of all.slice(i + 1))
					expect(
						a.x + a.width <= b.x ||
							b.x + b.width <= a.x ||
							a.y + a.height <= b.y ||
							b.y + b.height <= a.y,
					).toBe(true);
			});
		}
	});

	it('are twelve at most, and the card says how many there are', () => {
		const pages = handoverPack(withBuilt(15));
		expect(pages.flatMap((page) => photos(page.marks))).toHaveLength(12);
		const words = pages.flatMap((page) => wordsOn(page.marks)).join(' ');
		expect(words).toContain('12 of 15 photographs');
	});

	it('stand once where they are double, and not at all where they are of before', () => {
		const built = withBuilt(2);
		const [first, second] = built.job.photographs;
		const photographs = [first!, first!, { ...second!, kind: 'vehicle' as const }];
		const pages = handoverPack({ ...built, job: { ...built.job, photographs } });
		expect(pages.flatMap((page) => photos(page.marks)).map((m) => m.shows)).toHaveLength(1);
	});

	it('of which the picture is not there have a box that says so; the rest stands', () => {
		const pages = handoverPack(withBuilt(3, { missing: [1] }));
		expect(pages.flatMap((page) => photos(page.marks))).toHaveLength(2);
		const words = pages.flatMap((page) => wordsOn(page.marks)).join(' ');
		expect(words).toContain('This photograph is not with the job here.');
		for (const i of [1, 2, 3]) expect(words).toContain(`View ${i}.`);
	});

	it('are in the PDF, as another reader finds them, and the same again for the same plan', async () => {
		const [made] = pdfFiles('handover', withBuilt(5), loadFonts());
		const [again] = pdfFiles('handover', withBuilt(5), loadFonts());
		const bytes = made!.data as Uint8Array;
		expect(Buffer.from(bytes).equals(Buffer.from(again!.data as Uint8Array))).toBe(true);
		const found = (await picturesOnPages(bytes)).flat();
		const sizes = [0, 1, 2, 3, 4].map((i) => [size(i).width, size(i).height]);
		expect(found).toEqual(sizes);
		const words = (await readPdf(bytes)).pages.flatMap((p) => p.texts.map((t) => t.text)).join(' ');
		expect(words).toContain('View 5.');
	});

	it('are on the screen as pictures that hold nothing else', () => {
		const svg = handoverPack(withBuilt(1))
			.map((page) => drawingSvg(page, { colours: 'css' }))
			.join('');
		expect(svg.match(/<image [^>]*href="data:image\/jpeg;base64,[A-Za-z0-9+/=]+"/g)).toHaveLength(
			1,
		);
	});
});

it('the card of the shop has those that are wanted there', () => {
	const built = withBuilt(3);
	const photographs = built.job.photographs.map((p, i) => ({ ...p, shopCard: i === 1 }));
	const pages = shopCardPack({ ...built, job: { ...built.job, photographs } });
	expect(pages.flatMap((page) => photos(page.marks)).map((m) => m.shows)).toEqual([
		'View 2.; 2026-11-30',
	]);
});
