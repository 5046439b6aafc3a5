import type { Outline } from '../../geometry';
import { formOf } from './form';
import type { Operation } from './operation';

/** Nothing where the saw has cut it: a rectangle as large as the part, its corners sharp. */
export function outlineCut(outline: Outline, across: number, up: number): Operation[] {
	const form = formOf(outline);
	const sawn =
		form.kind === 'rectangle' &&
		form.radii.every((r) => r === 0) &&
		Math.abs(form.box.length - across) < 3 &&
		Math.abs(form.box.width - up) < 3;
	return sawn ? [] : [{ kind: 'outline', form }];
}
