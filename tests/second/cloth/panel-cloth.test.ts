import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plan } from '../../../src/lib/plan';
import { runs } from '../../depth';
import { outlineIs, sizeIs, type BlankRead } from './compare';
import { extentOf, FlatCloth, fromBehind } from './flat';
import {
	coverSize,
	faceFlat,
	faceSize,
	gluedArea,
	ownSize,
	patchSize,
	ringSizes,
	roundingOf,
	windowSize,
} from './panel-cloth';
import { jobOf } from './panel-job';
import { type LayerWish, panelsOf, type PanelWish } from './random-panel';

const MM = 1600;
/** Both ends of what is cut out lie on the grid. mm */
const CUT = 0.01;
/** A patch lies askew: its corners snap once more. mm */
const ASKEW = 0.02;

type Blanks = Map<string, BlankRead>;
interface Size {
	readonly x: number;
	readonly y: number;
}

/** Blanks of the plan by what they are of. A panel that cannot be made is no case. */
async function blanksOf(w: PanelWish): Promise<Blanks> {
	const made = await plan(jobOf(w), { effort: 1 });
	fc.pre(!made.problems.some((p) => p.kind === 'stop'));
	return new Map(made.blanks.map((b) => [b.id.replace('panel.', ''), b]));
}

function one(blanks: Blanks, key: string): BlankRead {
	const found = blanks.get(key);
	if (!found) throw new Error(`no blank of ${key} among ${[...blanks.keys()].join(', ')}`);
	return found;
}

/** Sizes to the right and upwards, as they lie on the roll. */
const laid = (size: Size, nap: number): [number, number] =>
	nap % 180 === 0 ? [size.x, size.y] : [size.y, size.x];

/** What is cut out of a cloth is as large as the tape says. */
function cutIs(blank: BlankRead, size: Size, nap: number): void {
	const cut = blank.marks.find((m) => m.kind === 'window');
	if (!cut) throw new Error('nothing is cut out');
	const { low, high } = extentOf(cut.line);
	const [along, across] = laid(size, nap);
	expect(Math.abs((high.x - low.x) / MM - along), 'cut along').toBeLessThan(CUT);
	expect(Math.abs((high.y - low.y) / MM - across), 'cut across').toBeLessThan(CUT);
}

/** The same layer under the cloth of the face and off its edge. */
const covered = (l: LayerWish | null): LayerWish | null =>
	l && { ...l, covering: 'with', flush: false };

/**
 * Compares panels of one form until as many were met as the law has runs; those it does not speak
 * of do not count.
 */
const law = (
	name: string,
	form: PanelWish['opening']['form'],
	compare: (w: PanelWish, blanks: Blanks) => void,
	speaksOf: (w: PanelWish) => boolean = () => true,
	made: (w: PanelWish) => PanelWish = (w) => w,
): void =>
	it(name, () =>
		fc.assert(
			fc.asyncProperty(panelsOf(form).map(made), async (w) => {
				fc.pre(speaksOf(w));
				compare(w, await blanksOf(w));
			}),
			{ numRuns: runs(160) },
		),
	);

describe('the cloth of a panel, by a tape laid over it', () => {
	law('is as long and as wide, over every step and round every edge', 'plain', (w, blanks) => {
		const face = one(blanks, 'face');
		expect([face.cloth, face.count]).toEqual([w.cloth, w.count]);
		sizeIs(face, ...laid(faceSize(w), w.nap));
	});

	law(
		'climbs a layer flush with an edge, wherever along it that lies',
		'plain',
		(w, blanks) => sizeIs(one(blanks, 'face'), ...laid(faceSize(w), w.nap)),
		(w) => w.left !== null,
		(w) => ({
			...w,
			left: w.left && { ...w.left, covering: 'with', place: 'raised', flush: true },
		}),
	);

	law('lies round a rounded panel', 'rounded', (w, blanks) => {
		expect(outlineIs(one(blanks, 'face'), new FlatCloth(faceFlat(w)), w.nap, roundingOf(w))).toBe(
			'whole',
		);
	});

	law('lies round a panel that leans', 'trapezoid', (w, blanks) => {
		fc.pre(outlineIs(one(blanks, 'face'), new FlatCloth(faceFlat(w)), w.nap) === 'whole');
	});

	law('lies round a panel with a notch', 'L', (w, blanks) => {
		expect(outlineIs(one(blanks, 'face'), new FlatCloth(faceFlat(w)), w.nap)).toBe('whole');
	});

	const isOwn = (w: PanelWish): boolean => [w.left, w.right].some((l) => l?.covering === 'own');
	law(
		'of a layer wrapped by itself, and of the floor of a recess',
		'plain',
		(w, blanks) => {
			for (const key of ['left', 'right'] as const) {
				const own = ownSize(w, key);
				if (!own) continue;
				sizeIs(one(blanks, key), ...laid(own, w.nap));
				expect(one(blanks, key).cloth).toBe(w[key]?.cloth ?? w.cloth);
			}
		},
		isOwn,
	);

	law(
		'of a service cover',
		'plain',
		(w, blanks) => sizeIs(one(blanks, 'cover-cover'), ...laid(coverSize(w)!, w.nap)),
		(w) => w.cover !== null,
	);

	law(
		'of a ring, and what is cut out of it',
		'plain',
		(w, blanks) => {
			const { cloth, cut } = ringSizes(w)!;
			const ring = one(blanks, 'ring-ring');
			sizeIs(ring, ...laid(cloth, w.nap));
			if (Math.min(cut.x, cut.y) > 1) cutIs(ring, cut, w.nap);
		},
		(w) => w.ring !== null,
	);

	law(
		'has a window as large as its flaps leave',
		'plain',
		(w, blanks) => cutIs(one(blanks, 'face'), windowSize(w)!, w.nap),
		(w) => {
			const size = windowSize(w);
			return size !== null && Math.min(size.x, size.y) > 1;
		},
	);

	law(
		'is glued to as much board as it lies on',
		'plain',
		(w, blanks) => expect(one(blanks, 'face').bonded / gluedArea(w)!).toBeCloseTo(1, 4),
		(w) => gluedArea(w) !== null,
		(w) => ({
			...w,
			left: covered(w.left),
			right: covered(w.right),
			window: null,
			cover: null,
			ring: null,
		}),
	);

	law(
		'has a patch in a corner it cannot stretch round',
		'L',
		(w, blanks) => {
			// Its middle lies into the corner, at half a right angle to both edges.
			const half = Math.SQRT1_2;
			const turned = patchSize(w)!.map(({ x, y }) => ({ x: (x + y) * half, y: (y - x) * half }));
			const { low, high } = extentOf(turned.map((p) => fromBehind(p, w.nap)));
			const patch = one(blanks, 'face.k1');
			expect(Math.abs(patch.length / MM - (high.x - low.x)), 'along').toBeLessThan(ASKEW);
			expect(Math.abs(patch.width / MM - (high.y - low.y)), 'across').toBeLessThan(ASKEW);
		},
		(w) => w.patches,
	);
});
