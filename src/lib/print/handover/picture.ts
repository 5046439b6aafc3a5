import type { PanelDetail, PanelPlan } from '../../design';
import { bounds, type Outline } from '../../geometry';
import { mm, toMm } from '../../measure';
import { type Drawing, type Mark, textWidth } from '../drawing';
import { panelPicture, pictureView } from '../panel';
import { letterOf } from './comes-off';

/** Letters of a device's name, mm. */
const NAME = 2.8;

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
	/** A name wider than its device stands under it, as near its middle as the panel allows. */
	const named = ({ body, name: text }: PanelDetail['devices'][number]): Mark => {
		const own = bounds(body);
		const half = (textWidth(text, NAME) / 2 + 0.8) / view.scale;
		if (2 * half < toMm(own.length)) return middle(body, text, NAME);
		const board = bounds(d.fit.finished);
		const [least, most] = [toMm(board.x) + half, toMm(board.x + board.length) - half];
		const x = Math.max(least, Math.min(toMm(own.x + own.length / 2), most));
		return at(mm(x), own.y - mm(NAME / view.scale), text, NAME);
	};
	const marks = [
		...d.covers.map((c, i) => middle(c.finished, letterOf(i), 6)),
		...d.hinges.map((h, i) =>
			at((h.from.x + h.to.x) / 2, (h.from.y + h.to.y) / 2, letterOf(d.covers.length + i), 6),
		),
		...d.devices.map((device) => named(device)),
	];
	return { ...picture, marks: [...picture.marks, ...marks] };
}
