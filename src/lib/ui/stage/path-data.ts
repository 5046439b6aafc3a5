import { type Outline, type Point } from '../../geometry';
import { around, nth } from '../../measure';

/** An outline as the path of an SVG, each of its points put on the screen by `on`. */
export function pathData(outlines: readonly Outline[], on: (p: Point) => Point): string {
	return outlines
		.filter((o) => o.length > 1)
		.map((o) => ringData(o, on))
		.join('');
}

function ringData(outline: Outline, on: (p: Point) => Point): string {
	const start = on(nth(outline, 0));
	const steps = outline.map((corner, i) => {
		const to = on(around(outline, i + 1));
		const bulge = corner.bulge ?? 0;
		if (bulge === 0) return `L${num(to.x)} ${num(to.y)}`;
		const from = on(corner);
		const chord = Math.hypot(to.x - from.x, to.y - from.y);
		const r = num((chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge)));
		// y runs down on a screen: what turns left on paper turns the other way there.
		return `A${r} ${r} 0 ${Math.abs(bulge) > 1 ? 1 : 0} ${bulge > 0 ? 0 : 1} ${num(to.x)} ${num(to.y)}`;
	});
	return `M${num(start.x)} ${num(start.y)}${steps.join('')}Z`;
}

const num = (n: number): number => Math.round(n * 100) / 100;
