import { type Job, priceOfLength, rollOf } from '../../job';
import type { BoardLayouts, ClothLayouts } from '../../layout';
import { money } from '../../measure';
import { perArea } from '../material';
import type { Order, OrderLine, Quote, Spoil } from '../types';

const NOTHING = money(0);
export const NO_SPOIL: Spoil = {
	...{ pieces: 0, lost: NOTHING, material: NOTHING },
	...{ labour: NOTHING, overhead: NOTHING, cost: NOTHING },
};

/** What is laid out, with the pieces that were spoiled. */
interface Laid {
	readonly boards: readonly BoardLayouts[];
	readonly cloths: readonly ClothLayouts[];
}

/**
 * What spoil costs: the whole job as it is less the whole job as if nothing had been spoiled.
 * Either may come out below nothing where a search finds more with more to lay; the sum is what
 * the shop spends.
 */
export function spoilOf(job: Job, laid: Laid, is: Quote, sound: Quote): Spoil {
	const materialIn = (q: Quote): number => q.bought + q.fromRack - q.credit;
	const material = money(materialIn(is) - materialIn(sound));
	const labour = money(is.labourCost - sound.labourCost);
	const overhead = money(is.overhead - sound.overhead);
	const lost = lostBoards(job, laid.boards) + lostCloth(job, laid.cloths);
	return {
		pieces: spoiledPieces(laid).size,
		lost: money(lost),
		...{ material, labour, overhead, cost: money(material + labour + overhead) },
	};
}

/** Every piece that was spoiled, by its id and which of them it was. */
export function spoiledPieces({ boards, cloths }: Laid): ReadonlySet<string> {
	const placed = [
		...boards.flatMap(({ answer, sources }) =>
			sources.flatMap((s, i) => s.spoiled.map((at) => answer.layouts[i]?.placed[at])),
		),
		...cloths
			.flatMap((c) => c.rolls)
			.flatMap((r) => (r.pulled?.spoiled ?? []).map((at) => r.answer.placed[at])),
	];
	return new Set(placed.flatMap((p) => (p ? [`${p.id}/${p.copy}`] : [])));
}

function lostBoards(job: Job, boards: readonly BoardLayouts[]): number {
	return boards.reduce((sum, { material, answer, sources }) => {
		const area = sources
			.flatMap((s, i) => s.spoiled.map((at) => answer.layouts[i]?.placed[at]))
			.reduce((all, p) => all + (p ? p.length * p.width : 0), 0);
		return sum + area * perArea(job, material);
	}, 0);
}

function lostCloth(job: Job, cloths: readonly ClothLayouts[]): number {
	return cloths
		.flatMap((c) => c.rolls)
		.reduce((sum, { roll, pulled, answer }) => {
			const line = rollOf(job, roll);
			const area = (pulled?.spoiled ?? [])
				.map((at) => answer.placed[at])
				.reduce((all, p) => all + (p ? p.length * p.width : 0), 0);
			return sum + (line ? priceOfLength(line, area / line.usable, job.shop.ruler) : 0);
		}, 0);
}

/** The order with what a sheet is bought for said, where that is spoiled parts and no other. */
export function saidFor(
	order: Order,
	{ boards }: Laid,
	parts: readonly { readonly id: string; readonly label: string; readonly name: string }[],
): Order {
	const ids = new Map<string, Set<string>>();
	for (const b of boards)
		for (const [i, layout] of b.answer.layouts.entries()) {
			const source = b.sources[i];
			if (!source || source.cut || !isAllAgain(b, i)) continue;
			const known = ids.get(source.id) ?? new Set();
			ids.set(source.id, new Set([...known, ...layout.placed.map((p) => p.id)]));
		}
	const told = (id: string): string => {
		const part = parts.find((p) => p.id === id);
		return `${part ? `${part.label} ${part.name}` : id}, spoiled: cut again`;
	};
	const lineFor = (line: OrderLine): OrderLine => {
		const mine = line.group === 'sheets' ? ids.get(line.id) : undefined;
		return mine ? { ...line, for: [...line.for, ...[...mine].map(told)] } : line;
	};
	return { ...order, lines: order.lines.map(lineFor) };
}

/** Is all that lies on a sheet there because the same was spoiled before? */
export function isAllAgain({ answer, sources }: BoardLayouts, index: number): boolean {
	const spoiled = sources.flatMap((s, i) =>
		s.spoiled.flatMap((at) => answer.layouts[i]?.placed[at]?.id ?? []),
	);
	const laid = answer.layouts.flatMap((l) => l.placed);
	const again = (id: string): number => {
		const mine = spoiled.filter((s) => s === id).length;
		return laid.filter((p) => p.id === id).length - mine;
	};
	const placed = answer.layouts[index]?.placed ?? [];
	return placed.every((p) => spoiled.includes(p.id) && p.copy >= again(p.id));
}
