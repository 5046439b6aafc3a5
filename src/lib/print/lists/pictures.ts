import type { Plan } from '../../plan';
import { boxPicture } from '../box';
import { type Drawing, orStandIn } from '../drawing';
import { panelPicture } from '../panel';

/** Each box and each panel as it will be seen. */
export function pictures({ boxes, panels }: Plan): Drawing[] {
	return [
		...boxes.flatMap(({ name, figures }) =>
			figures ? [orStandIn(name, () => boxPicture(name, figures))] : [],
		),
		...panels.flatMap(({ name, detail }) =>
			detail ? [orStandIn(name, () => panelPicture(name, detail))] : [],
		),
	];
}
