import type { BoxPlan, PanelPlan, Point3 } from '../../design';
import type { Job } from '../../job';
import { type Body, boxBodies, openingLines, panelBodies, spaceLines } from './bodies';

/** What the solid view shows of one thing of the job, mm. */
export interface Solids {
	readonly name: string;
	readonly bodies: readonly Body[];
	/** The space or opening it was measured for, in dashes. */
	readonly space: readonly (readonly Point3[])[];
	/** Whether there is any cloth to take off. */
	readonly clothed: boolean;
}

export function solidOfBox(box: BoxPlan, job: Job): Solids | null {
	const asked = job.boxes.find((b) => b.id === box.id);
	if (!box.figures || !asked) return null;
	return solids(box.name, boxBodies(box.figures, asked), spaceLines(box.figures, asked.space));
}

/** Of a pair the left one is shown, as it is drawn. */
export function solidOfPanel(panel: PanelPlan): Solids | null {
	if (!panel.detail) return null;
	const hand = panel.detail.both ? '-L' : '';
	const marks = new Map(
		panel.parts
			.filter((p) => p.id.endsWith(hand))
			.map((p) => [p.id.slice(panel.id.length + 1, p.id.length - hand.length), p.label]),
	);
	return solids(panel.name, panelBodies(panel.detail, marks), openingLines(panel.detail));
}

function solids(name: string, bodies: Body[], space: Point3[][]): Solids {
	const clothed = bodies.some((b) => b.facets.some((f) => f.tone === 'cloth'));
	return { name, bodies, space, clothed };
}
