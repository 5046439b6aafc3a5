import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import { plan } from '../../../src/lib/plan';
import { runs } from '../../depth';
import { forms } from '../random-box';
import { boardsOf, type Form } from '../section';
import { faceByFace, inABand, seamsOf, type CarpetWish, type Worked } from './box-cloth';
import { outlineIs, type BlankRead } from './compare';
import { extentOf } from './flat';
import { STOCK } from './random-panel';

const MM = 1600;
const MARKS = ['plain', 'striped', 'checked'] as const;
type Way = 'band' | 'faces';

const wish = fc.record({
	form: forms,
	cloth: fc.constantFrom(...MARKS),
	/** Which faces get cloth: all, or these of them. */
	some: fc.option(fc.array(fc.boolean(), { minLength: 8, maxLength: 8 })),
	/** Another cloth for these. */
	other: fc.array(fc.option(fc.constantFrom(...MARKS), { freq: 3 }), {
		minLength: 8,
		maxLength: 8,
	}),
	isOneCloth: fc.boolean(),
	show: fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }),
	overlap: fc.integer({ min: 6, max: 28 }),
	margin: fc.integer({ min: 8, max: 28 }),
	count: fc.integer({ min: 1, max: 2 }),
});
type Wish = typeof wish extends fc.Arbitrary<infer T> ? T : never;

const keysOf = (form: Form): string[] => [...boardsOf(form.kind), 'left', 'right'];

function carpetOf(
	w: Wish,
): CarpetWish & { cover: string[]; other: { face: string; cloth: string }[] } {
	const keys = keysOf(w.form);
	const cover = keys.filter((_, i) => w.some?.[i] === true);
	const other = keys.flatMap((face, i) => {
		const cloth = w.other[i];
		return cloth && !w.isOneCloth ? [{ face, cloth }] : [];
	});
	const on = new Map([
		...(cover.length > 0 ? cover : keys).map((key) => [key, w.cloth] as const),
		...other.map((o) => [o.face, o.cloth] as const),
	]);
	const show = keys.filter((_, i) => w.show[i]);
	return { on, show, cover, other, overlap: w.overlap, margin: w.margin };
}

function jobOf(w: Wish, way: Way): JobFile {
	const { form } = w;
	const { cover, other, show, overlap, margin } = carpetOf(w);
	const shape =
		form.kind === 'plain'
			? { kind: form.kind, width: form.width, height: form.height, depth: form.depth }
			: form.kind === 'slanted'
				? {
						kind: form.kind,
						width: form.width,
						height: form.height,
						face: 'back' as const,
						lean: { by: 'depths' as const, bottom: form.depth, top: form.top },
					}
				: {
						kind: form.kind,
						width: form.width,
						height: form.height,
						depth: form.depth,
						corner: 'bottom-back' as const,
						stepHeight: form.step.y,
						stepDepth: form.step.x,
					};
	const carpet = { cloth: w.cloth, way, cover, other, show, overlap, margin };
	const box = { id: 'box', name: 'Box', material: 'board', shape, carpet, count: w.count };
	return { name: 'Carpet', stock: STOCK, boxes: [box as NonNullable<JobFile['boxes']>[number]] };
}

interface Sized {
	readonly size: readonly number[];
	readonly of: string;
}

/** Long ones first, of these wide ones, and those of one size by their cloth. */
function inOrder(a: Sized, b: Sized): number {
	const apart = [0, 1].find((way) => Math.abs(a.size[way]! - b.size[way]!) > 1);
	return apart === undefined ? a.of.localeCompare(b.of) : b.size[apart]! - a.size[apart]!;
}

function compare(blanks: readonly BlankRead[], worked: readonly Worked[], count: number): number {
	const read = blanks.map((blank) => {
		const key = blank.id.replace('box.carpet.', '').replace(/^band.*/, 'band');
		return { key, blank, size: [blank.length / MM, blank.width / MM], of: blank.cloth };
	});
	const own = worked.map((w) => {
		const { low, high } = extentOf(w.laid.corners());
		return { ...w, size: [high.y - low.y, high.x - low.x], of: w.cloth };
	});
	const of = <T extends Sized & { readonly key: string }>(list: T[], key: string) =>
		list.filter((x) => x.key === key).sort(inOrder);
	const keys = [...new Set([...read, ...own].map((x) => x.key))];
	let whole = 0;
	for (const key of keys) {
		const [theirs, mine] = [of(read, key), of(own, key)];
		expect(theirs.length, key).toBe(mine.length);
		mine.forEach((m, i) => {
			const { blank } = theirs[i]!;
			expect([blank.cloth, blank.count], key).toEqual([m.cloth, count]);
			// Drawn with its nap down the roll: bands from the foot up, faces as they stand.
			if (napFits(blank, m)) whole++;
		});
	}
	return whole;
}

/** The nap runs down the face as the box stands: along its outline, or against it down the back. */
function napFits(blank: BlankRead, { laid }: Worked): boolean {
	const tries = [-90, 90].map((nap) => {
		try {
			return outlineIs(blank, laid, nap);
		} catch (error) {
			return error;
		}
	});
	if (tries.includes('whole')) return true;
	if (tries.includes('odd')) return false;
	throw tries[0];
}

describe.each(['band', 'faces'] as const)(
	'the carpet of a box cut as %s, by going round it',
	(way) => {
		it('is the cloth the plan cuts, and as much seam', async () => {
			await fc.assert(
				fc.asyncProperty(wish, async (w) => {
					const made = await plan(jobOf(w, way), { effort: 1 });
					fc.pre(!made.problems.some((p) => p.kind === 'stop') && made.blanks.length > 0);
					const carpet = carpetOf(w);
					const worked = way === 'band' ? inABand(w.form, carpet) : faceByFace(w.form, carpet);
					fc.pre(compare(made.blanks, worked, w.count) > 0);
					const priced = made.carpets[0]?.ways.find((x) => x.way === way);
					const seams = seamsOf(w.form, carpet, way);
					expect(Math.abs((priced?.seamLength ?? 0) / MM - seams), 'seams').toBeLessThan(0.05);
				}),
				{ numRuns: runs(240) },
			);
		});
	},
);
