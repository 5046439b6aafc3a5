import { picturesNamed, withPictures } from '../../job';
import type { Plan } from '../../plan';
import type { OutputKind } from '../../print';
import type { Store } from '../../store';

/** Papers that photographs stand on. */
const PICTURED: readonly OutputKind[] = ['handover', 'shop-card'];

/** The plan with the pictures a paper shows, as far as they are in this browser. */
export async function pictured(
	plan: Plan,
	kind: OutputKind,
	store: Pick<Store, 'updatesAfter'>,
): Promise<Plan> {
	const named = PICTURED.includes(kind) ? picturesNamed(plan.job) : [];
	if (named.length === 0) return plan;
	try {
		const { picturesHere } = await import('../../store/pictures/pictures-here');
		return { ...plan, job: withPictures(plan.job, await picturesHere(store, named)) };
	} catch {
		return plan; // a box stands in each one's place, and says so
	}
}
