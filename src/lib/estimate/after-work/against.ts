import { clothName, type Job, materialName, type TookMaterial, type TookTime } from '../../job';
import type { BoardLayouts, ClothLayouts } from '../../layout';
import { toMm } from '../../measure';
import { isAllAgain } from '../spoil';
import type { Order, Quote } from '../types';

/** What of a plan an estimate is made of. */
interface Estimated {
	readonly job: Job;
	readonly boards: readonly BoardLayouts[];
	readonly cloths: readonly ClothLayouts[];
	readonly order: Order;
}

/**
 * The work of the whole job by operation as its price counts it, what is cut again for spoiled
 * pieces no part of it; nothing taken yet.
 */
export function timesOf({ quote }: { readonly quote: Pick<Quote, 'labour'> }): TookTime[] {
	return quote.labour.map(({ what, amount, unit, minutes }) => ({
		...{ what, unit, taken: 0 },
		amount: rounded(amount),
		estimated: rounded(minutes),
	}));
}

/**
 * The material of the whole job: sheets with what is taken off the rack, metres of cloth, packs of
 * sundries. Taken is what is booked: sheets that are cut, cloth that is pulled, sundries used.
 * Sheets that hold nothing but parts cut again were in no estimate; what was spoiled has a row of
 * its own.
 */
export function materialsOf(plan: Estimated): TookMaterial[] {
	const { job, boards, cloths, order } = plan;
	const sheets = boards.flatMap((b) => {
		const what = materialName(job, b.material);
		const again = b.sources.filter((_, i) => isAllAgain(b, i)).length;
		const spoiled = b.sources.reduce((sum, s) => sum + s.spoiled.length, 0);
		return [
			{
				...{ what, unit: 'sheets', estimated: b.sources.length - again },
				taken: b.sources.filter(({ cut }) => cut).length,
			},
			spoiledRow(what, spoiled),
		];
	});
	const metres = (of: ClothLayouts['rolls']): number =>
		rounded(of.reduce((sum, { pull }) => sum + toMm(pull) / 1000, 0));
	const pulled = cloths.map(({ cloth, rolls }) => ({
		...{ what: clothName(job, cloth), unit: 'm', estimated: metres(rolls) },
		taken: metres(rolls.filter((roll) => roll.pulled)),
	}));
	const open = order.lines.filter((line) => line.group === 'sundries' && line.id !== '');
	const spoiledCloth = cloths.map(({ cloth, rolls }) =>
		spoiledRow(
			clothName(job, cloth),
			rolls.reduce((sum, { pulled }) => sum + (pulled?.spoiled.length ?? 0), 0),
		),
	);
	const counted = open.map((line) => ({
		...{ what: line.what, unit: 'packs', taken: 0 },
		estimated: rounded(line.need.number / line.pack),
	}));
	const before = new Map(job.took.materials.map((m) => [m.what, m.estimated]));
	const used = job.used.map(({ name, packs }) => ({
		...{ what: name, unit: 'packs', taken: packs },
		estimated: before.get(name) ?? packs,
	}));
	return [...sheets, ...pulled, ...spoiledCloth, ...counted, ...used].filter(
		(m) => m.estimated > 0 || m.taken > 0,
	);
}

/** Waste that nobody estimates: what was cut and had to be cut again. */
const spoiledRow = (what: string, taken: number): TookMaterial => ({
	...{ what: `${what}: spoiled`, unit: 'pieces', estimated: 0, taken },
});

/** Far finer than anybody measures an hour or a metre. */
const rounded = (n: number): number => Math.round(n * 1000) / 1000;

type Minutes = keyof Job['shop']['labour']['minutes'];

/** The shop's figure behind each operation that the plan counts. */
export const MINUTES_OF: Readonly<Record<string, Minutes>> = {
	'Sheets handled': 'sheet',
	'Saw cuts': 'cut',
	'Length of saw cut': 'cutMetre',
	'Fence settings': 'setting',
	'Parts marked and eased': 'part',
	'Routed edges': 'routedMetre',
	'Foam bonded': 'foamSquareMetre',
	'Cloth bonded': 'bondedSquareMetre',
	'Cloth cut along outlines': 'outlineMetre',
	'Seams cut': 'seamMetre',
	'Wrapped corners': 'corner',
	'Relief cuts': 'relief',
	'Cables, looms and hoses cut': 'run',
	'Panels put together': 'panel',
	'Boxes put together': 'box',
};
