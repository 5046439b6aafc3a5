import type { PanelDetail, PanelPlan } from '../../design';
import { bounds, type Outline } from '../../geometry';
import { toMm } from '../../measure';
import type { Drawing, Mark } from '../drawing';
import { panelPicture, pictureView } from '../panel';
import { letterOf } from './comes-off';

/** The panel as it is seen, each cover and fold with its letter, each device by its name. */
export function letteredPanel({ name }: Pick<PanelPlan, 'name'>, d: PanelDetail): Drawing {
	const picture = panelPicture(name, d);
	const { view } = pictureView(d);
	const at = (x: number, y: number, text: string, size: number): Mark => ({
		...{ kind: 'text', text, size, anchor: 'middle', halo: true },
		...{ x: view.x + toMm(x) * view.scale, y: view.y - toMm(y) * view.scale + size / 3 },
		...(size > 4 ? { weight: 'semibold' as const } : {}),
	});
	const middle = (outline: Outline, text: string, size: number): Mark => {
		const { x, y, length, width } = bounds(outline);
		return at(x + length / 2, y + width / 2, text, size);
	};
	const marks = [
		...d.covers.map((c, i) => middle(c.finished, letterOf(i), 6)),
		...d.hinges.map((h, i) =>
			at((h.from.x + h.to.x) / 2, (h.from.y + h.to.y) / 2, letterOf(d.covers.length + i), 6),
		),
		...d.devices.map((device) => middle(device.body, device.name, 2.8)),
	];
	return { ...picture, marks: [...picture.marks, ...marks] };
}
