import { changedSince } from '../../../layout';
import type { Plan } from '../../../plan';
import { partTitle } from '../sheet-text';

/** Parts that are cut, in words: those that fit the design no more, and those it needs no more. */
export interface CutNow {
	/** 'B1 Front: size, bevels', one for each piece that has to be cut again. */
	readonly wrong: readonly string[];
	/** 'B2 Back, 1 over', one for each kind. */
	readonly over: readonly string[];
}

export function cutNow(plan: Plan): CutNow {
	const cut = plan.job.pinned.filter((p) => p.cut);
	const pieces = cut.flatMap((pinned) =>
		pinned.placed
			.filter((placed) => !placed.spoiled)
			.map((placed) => {
				const part = plan.parts.find((p) => p.id === placed.id);
				const isOther = part?.material !== pinned.material;
				const changed = changedSince(part, pinned, placed);
				return { id: placed.id, changed: part && isOther ? ['board'] : changed };
			}),
	);
	const wrong = pieces.flatMap(({ id, changed }) =>
		changed && changed.length > 0 ? [`${partTitle(plan, id)}: ${changed.join(', ')}`] : [],
	);
	const fitting = (id: string): number =>
		pieces.filter((p) => p.id === id && p.changed?.length !== undefined && p.changed.length === 0)
			.length;
	const gone = pieces.filter((p) => p.changed === null).map(({ id }) => id);
	const over = [...new Set(pieces.map(({ id }) => id))].flatMap((id) => {
		const needed = plan.parts.find((p) => p.id === id)?.count ?? 0;
		const many = gone.includes(id) ? gone.filter((g) => g === id).length : fitting(id) - needed;
		return many > 0 ? [`${partTitle(plan, id)}, ${many} over`] : [];
	});
	return { wrong: numbered(wrong), over };
}

/** Equal ones once, with how many. */
function numbered(all: readonly string[]): string[] {
	return [...new Set(all)].map((text) => {
		const many = all.filter((t) => t === text).length;
		return many > 1 ? `${many} of ${text}` : text;
	});
}
