import { planBox } from '../../../src/lib/design/box/plan-box';
import type { BoxPlan } from '../../../src/lib/design/box/box-plan';
import type { BoxFile } from '../../../src/lib/job/box/box';
import { job, type Job, type JobFile } from '../../../src/lib/job/job';

/** Boards of several thicknesses, one of them thick enough to spoil a small box. */
export const MATERIALS: NonNullable<NonNullable<JobFile['stock']>['materials']> = [
	{ id: 'ply-18', name: 'Birch plywood 18', nominal: 18, measured: 18, grain: true, density: 680 },
	{
		id: 'ply-17',
		name: 'Birch plywood 18, thin',
		nominal: 18,
		measured: 17.4,
		grain: true,
		density: 700,
	},
	{ id: 'mdf-12', name: 'MDF 12', kind: 'mdf', nominal: 12, measured: 12.1, density: 750 },
	{ id: 'mdf-25', name: 'MDF 25', kind: 'mdf', nominal: 25, measured: 25.2, density: 740 },
];

export type Asked = Omit<BoxFile, 'id' | 'name' | 'material'> & Partial<BoxFile>;

/** A job of one box on this rack. */
export function jobWith(asked: Asked, more: Partial<JobFile> = {}): Job {
	const one = { id: 'box', name: 'Box', material: 'ply-18', ...asked };
	return job.parse({ stock: { materials: MATERIALS }, ...more, boxes: [one] });
}

export function made(asked: Asked, more: Partial<JobFile> = {}): BoxPlan {
	const whole = jobWith(asked, more);
	return planBox(whole.boxes[0]!, whole, ['boxes', 0]);
}

/** A box that has to come out: its figures. */
export function figures(
	asked: Asked,
	more: Partial<JobFile> = {},
): NonNullable<BoxPlan['figures']> {
	const plan = made(asked, more);
	if (!plan.figures) throw new Error(plan.problems.map((p) => p.what).join(' '));
	return plan.figures;
}

/** What is said at a place of the box: 'check: what is off. What would be right.' */
export const told = (asked: Asked, path: string): string[] =>
	made(asked)
		.problems.filter((p) => p.path.slice(2).join('.') === path)
		.map((p) => `${p.kind}: ${p.what} ${p.fix}`);

/** A side profile whose first and third side cross. */
export const CROSSED: Asked = {
	shape: {
		kind: 'free',
		width: 600,
		corners: [
			{ x: 0, y: 0 },
			{ x: 400, y: 400 },
			{ x: 400, y: 0 },
			{ x: 0, y: 400 },
		],
	},
};
