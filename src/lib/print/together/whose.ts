import { LOOSE } from '../../design';
import type { Plan } from '../../plan';

/** Whose a thing is: the job of the plan, or one of several that are planned together. */
interface Whose {
	readonly number: string;
	readonly name: string;
	/** What the marks of its things begin with; '' where it is the only job. */
	readonly tag: string;
}

/** The job of the part or blank with this id. */
export function jobOf({ job, together }: Plan, id: string): Whose {
	const one = together?.jobs.find(({ tag }) => id.startsWith(`${tag}.`));
	return one ?? { number: job.number, name: job.name, tag: '' };
}

/** '0142 Camper van, rear bench'. */
export function jobText(plan: Plan, id: string): string {
	const { number, name } = jobOf(plan, id);
	return [number, name].filter((t) => t !== '').join(' ');
}

/** 'Bench box'; of loose parts only that they are, and of which of several jobs. */
export function ownerName(plan: Plan, owner: string): string {
	const found = [...plan.job.boxes, ...plan.job.panels].find((thing) => thing.id === owner);
	if (found) return found.name;
	const { tag } = owner === LOOSE ? { tag: '' } : jobOf(plan, owner);
	return tag === '' ? 'Loose parts' : `${tag} Loose parts`;
}
