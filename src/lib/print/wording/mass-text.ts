import { showMass, type Ruler } from '../../measure';
import type { BoxPlan, PanelPlan } from '../../design';
import type { Plan } from '../../plan';
import { clothMass } from '../../wrap';

type Weighed = Pick<Plan, 'job' | 'blanks'>;

/** Cloth on one box of its kind, kg. */
const clothOnBox = ({ job, blanks }: Weighed, id: string): number =>
	clothMass(blanks, id) / (job.boxes.find((b) => b.id === id)?.count ?? 1);

/** What one box weighs as it is lifted: boards, rods and drivers, and its cloth where it has any. */
export function boxMassText(plan: Weighed, box: BoxPlan, ruler: Ruler): string {
	const cloth = clothOnBox(plan, box.id);
	const mass = showMass((box.figures?.loadedMass ?? box.mass) + cloth, ruler);
	return `${mass} with drivers${cloth > 0 ? ' and cloth' : ''}`;
}

/** What one panel weighs: its boards, and its cloth where it has any. Foam and fittings do not count. */
export function panelMassText(plan: Weighed, panel: PanelPlan, ruler: Ruler): string {
	const asked = plan.job.panels.find((p) => p.id === panel.id);
	const made = (asked?.count ?? 1) * (asked?.pair === 'both' ? 2 : 1);
	const boards = panel.parts.reduce((sum, p) => sum + p.mass * p.count, 0) / made;
	const cloth = clothMass(plan.blanks, panel.id) / made;
	return `${showMass(boards + cloth, ruler)} ${cloth > 0 ? 'with cloth' : 'of board'}`;
}
