import type { PanelPlan } from '../../../src/lib/design/panel/panel-plan';
import { planPanel } from '../../../src/lib/design/panel/plan-panel';
import { job as jobSchema, type JobFile } from '../../../src/lib/job/job';

export type PanelFile = NonNullable<JobFile['panels']>[number];

export const STOCK: JobFile['stock'] = {
	materials: [
		{ id: 'ply-12', name: 'Birch plywood 12', nominal: 12, measured: 12 },
		{ id: 'ply-6', name: 'Birch plywood 6', nominal: 6, measured: 6 },
		{ id: 'mdf-3', name: 'MDF 3', kind: 'mdf', nominal: 3, measured: 3 },
	],
	cloths: [
		{ id: 'carpet', name: 'Carpet', loose: 4.5, pressed: 3, nap: 'one-way' },
		{ id: 'vinyl', name: 'Vinyl', kind: 'vinyl', loose: 1.2, pressed: 1 },
	],
};

/** Plans one panel of a job with the stock above. */
export function planned(
	panel: Omit<PanelFile, 'id' | 'name' | 'material'> & Partial<PanelFile>,
): PanelPlan {
	const file: JobFile = {
		stock: STOCK,
		panels: [{ id: 'p', name: 'Panel', material: 'ply-12', ...panel }],
	};
	const job = jobSchema.parse(file);
	return planPanel(job.panels[0]!, job, ['panels', 0]);
}
