import type { PanelDetail } from '../../design';
import { bounds, type Outline } from '../../geometry';
import { toMm } from '../../measure';
import type { Drawing, LineKind, View } from '../drawing';
import { outlineMark } from '../marks';

const ROOM = { width: 90, height: 60 };
const MARGIN = 4;

/** The panel as it is seen when it is in, without a word: for whoever orders it. */
export function panelPicture(name: string, d: PanelDetail): Drawing {
	const { view, height } = pictureView(d);
	const seen: readonly (readonly [Outline, LineKind])[] = [
		[d.fit.finished, 'wide'],
		...[...d.layers, ...d.windows, ...d.covers].map((t) => [t.finished, 'narrow'] as const),
		...d.devices.map((t) => [t.body, 'narrow'] as const),
		...d.rings.flatMap((r) => [
			[r.finished.outer, 'narrow'] as const,
			[r.finished.inner, 'narrow'] as const,
		]),
	];
	const marks = seen.map(([outline, line]) =>
		outlineMark([outline], view, line, { fill: 'sheet' }),
	);
	return { width: ROOM.width, height, title: name, marks };
}

/** Where the panel stands in its picture. */
export function pictureView(d: PanelDetail): { readonly view: View; readonly height: number } {
	const around = bounds(d.fit.finished);
	const scale = Math.min(
		(ROOM.width - 2 * MARGIN) / toMm(around.length),
		(ROOM.height - 2 * MARGIN) / toMm(around.width),
	);
	const height = toMm(around.width) * scale + 2 * MARGIN;
	const left = (ROOM.width - toMm(around.length) * scale) / 2;
	const view: View = {
		x: left - toMm(around.x) * scale,
		y: height - MARGIN + toMm(around.y) * scale,
		scale,
	};
	return { view, height };
}
