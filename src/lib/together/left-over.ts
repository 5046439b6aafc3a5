import { placesIn, type Problem } from '../job';
import { complaints } from '../layout';
import type { Plan } from '../plan';
import { idOf } from './tags';

type Laid = Pick<Plan, 'boards' | 'cloths'>;
type Unplaced = Plan['cloths'][number]['unplaced'];

/**
 * The problems of a job's own plan, with what is left over now in place of what was left over when
 * it was planned by itself: one job's offcut may be another's missing piece.
 */
export function asLaidNow(of: Plan, file: unknown, tag: string, now: Laid): readonly Problem[] {
	const places = placesIn(file);
	const before = complaints(of.job, places, of, []);
	const after = complaints(of.job, places, { ...of, ...leftIn(of, tag, now) }, []);
	const gone = before.filter((p) => !after.some((q) => isSame(p, q)));
	const come = after.filter((p) => !before.some((q) => isSame(p, q)));
	return [...of.problems.filter((p) => !gone.some((q) => isSame(p, q))), ...come];
}

const isSame = (a: Problem, b: Problem): boolean => JSON.stringify(a) === JSON.stringify(b);

/** The job's own layouts with what is left over of it now. */
function leftIn(of: Plan, tag: string, now: Laid): Laid {
	const left = (unplaced: Unplaced, owned: ReadonlySet<string>): Unplaced =>
		unplaced.flatMap((u) => {
			const id = u.id.startsWith(idOf(tag, '')) ? u.id.slice(idOf(tag, '').length) : '';
			return owned.has(id) ? [{ ...u, id, why: u.why.replaceAll(u.id, id) }] : [];
		});
	const parts = now.boards.flatMap((b) => b.answer.unplaced);
	const blanks = now.cloths.flatMap((c) => c.unplaced);
	const ids = (things: readonly { readonly id: string }[]) => new Set(things.map((t) => t.id));
	return {
		boards: of.boards.map((b) => {
			const mine = ids(of.parts.filter((p) => p.material === b.material));
			return { ...b, answer: { ...b.answer, unplaced: left(parts, mine) } };
		}),
		cloths: of.cloths.map((c) => ({
			...c,
			unplaced: left(blanks, ids(of.blanks.filter((b) => b.cloth === c.cloth))),
		})),
	};
}
