import { toMm } from '../../measure';
import type { Plan } from '../../plan';
import type { Blank } from '../../wrap';
import { onPaper, outlineSteps, type PathMark, polyline, type View } from '../drawing';
import { struckCircle } from './circle';
import { middles } from './middles';
import type { Template } from './template';

const BLANK_LINES: Partial<Record<Blank['marks'][number]['kind'], PathMark['line']>> = {
	fold: 'dashed',
	centre: 'chain',
	trim: 'phantom',
	step: 'dashed',
};

/**
 * A blank as a pattern for the back of the cloth: it is drawn as the back is seen, so it prints as
 * it is laid.
 */
export function blankTemplate(blank: Blank, plan: Pick<Plan, 'job' | 'panels'>): Template {
	const height = toMm(blank.width);
	const view: View = { x: 0, y: height, scale: 1 };
	const marks = blank.marks.map((m): PathMark => {
		const spots = m.line.map((p) => onPaper(p, view));
		return {
			kind: 'path',
			steps: m.closed ? [...polyline(spots), ['Z']] : polyline(spots),
			line: BLANK_LINES[m.kind] ?? 'wide',
		};
	});
	const outline: PathMark = {
		kind: 'path',
		steps: outlineSteps([blank.outline], view),
		line: 'wide',
	};
	return {
		id: blank.id,
		mark: blank.label,
		// A panel and its cloth bear the same mark: the pages must not be taken for each other.
		name: `${blank.label} ${blank.name}, cloth`,
		width: toMm(blank.length),
		height,
		seen: 'BACK of the cloth: a mirror of what shows; the nap points right',
		marks: [outline, ...marks, ...middles(toMm(blank.length), height)],
		traced: [outline, ...marks].filter((m) => struckCircle(m) === null),
		circles: marks.flatMap((m) => struckCircle(m) ?? []),
		legend: 'Thick: cut; dashed: fold or step; chain: centre lines; two dots: trim.',
		top: topOf(blank, plan),
	};
}

/**
 * Where up in the vehicle lies on the back of a panel's cloth, degrees to the left from the right:
 * the nap points right there, and the cloth is seen mirrored. Null for the cloth of a box.
 */
function topOf(blank: Blank, { job, panels }: Pick<Plan, 'job' | 'panels'>): number | null {
	const asked = job.panels.find((p) => p.id === blank.owner);
	if (asked === undefined) return null;
	const { nap } = asked;
	const detail = panels.find((p) => p.id === blank.owner)?.detail;
	// The right one of a pair is the left one mirrored, and so is its nap.
	const right = detail?.both === true && /-R\b/.test(blank.id.slice(blank.owner.length));
	return (right ? 180 - nap : nap) - 90;
}
