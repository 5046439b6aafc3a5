import {
	type Box,
	clothName,
	clothOnFace,
	type Job,
	type Panel,
	type Path,
	type Problem,
	type Unsized,
} from '../job';
import { mm, type Length } from '../measure';
import { type BoxPlan, planBox } from './box';
import { type PanelPlan, planPanel } from './panel';

/*
 * What can be made although nobody knows how thick a cloth is: all that comes out the same with two
 * thicknesses that have nothing to do with each other. No board is drawn by a guess.
 */

const STAND_INS: readonly Length[] = [mm(1.13), mm(3.71)];

/** The job with this thickness in the place of each that is not known. */
function standingIn(job: Job, unsized: readonly Unsized[], thick: Length): Job {
	const cloths = job.stock.cloths.map((cloth) =>
		unsized
			.filter((u) => u.cloth === cloth.id)
			.reduce((sized, { field }) => ({ ...sized, [field]: thick }), cloth),
	);
	return { ...job, stock: { ...job.stock, cloths } };
}

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** A panel, or those of its parts that hang on no unknown thickness. */
export function panelUnsized(
	panel: Panel,
	job: Job,
	path: Path,
	unsized: readonly Unsized[],
): PanelPlan {
	if (unsized.length === 0) return planPanel(panel, job, path);
	const [one, other] = STAND_INS.map((thick) =>
		planPanel(panel, standingIn(job, unsized, thick), path),
	);
	if (!one || !other || same(one, other)) return planPanel(panel, job, path);
	const alike = <T>(list: readonly T[], others: readonly T[]): T[] =>
		list.filter((x) => others.some((y) => same(x, y)));
	const parts = alike(one.parts, other.parts);
	const lost = one.parts.filter((p) => !parts.includes(p)).map((p) => p.name);
	return {
		id: panel.id,
		name: panel.name,
		parts,
		coverings: [],
		needs: [],
		problems: [
			...alike(one.problems, other.problems),
			leftOut(panel, job, { kept: parts.map((p) => p.name), lost }, { path, unsized }),
		],
	};
}

function leftOut(
	panel: Panel,
	job: Job,
	{ kept, lost }: { readonly kept: readonly string[]; readonly lost: readonly string[] },
	{ path, unsized }: { readonly path: Path; readonly unsized: readonly Unsized[] },
): Problem {
	const names = [...new Set(unsized.map((u) => `"${clothName(job, u.cloth)}"`))].join(' and ');
	const left = lost.length > 0 ? lost.join(', ') : 'its fit and its cloth';
	const stays = kept.length > 0 ? ` ${kept.join(', ')} can be cut: no cloth has a say in it.` : '';
	return {
		path,
		kind: 'note',
		what: `Until it is known how thick ${names} is, left out of ${panel.name}: ${left}.${stays}`,
		fix: 'Nothing to do here: give the cloth its thickness.',
	};
}

/** A box; whether it goes in with a cloth of unknown thickness on it nobody can say. */
export function boxUnsized(box: Box, job: Job, path: Path, unsized: readonly Unsized[]): BoxPlan {
	const plan = planBox(box, job, path);
	const { carpet } = box;
	if (!carpet || !plan.figures) return plan;
	const faces = plan.skin ? [...plan.skin.round, ...plan.skin.ends] : [];
	const on = faces.map((f) => clothOnFace(carpet, f.key));
	const thick = unsized.find((u) => u.field === 'loose' && on.includes(u.cloth));
	if (!thick) return plan;
	const fit = { ...plan.figures.fit, fits: null, passes: null, turn: null };
	const problem: Problem = {
		path: [...path, 'carpet'],
		kind: 'note',
		what: `It is not known how thick "${clothName(job, thick.cloth)}" lies on ${box.name}: its sizes are those of the bare box, and whether it goes in with its cloth is not said.`,
		fix: 'Nothing to do here: give the cloth its thickness.',
	};
	return { ...plan, figures: { ...plan.figures, fit }, problems: [...plan.problems, problem] };
}
