import { materialOf, type Job, type LoosePart, type Problem } from '../job';
import { bounds, perimeter } from '../geometry';
import { sayLengths, ticks, TICKS_PER_MM, type Ruler } from '../measure';
import type { Part } from './part';

export const LOOSE = 'loose parts';

/**
 * Parts listed by hand, as they are; one whose outline is larger than its rectangle is left out and
 * said.
 */
export function planLoose(job: Job): { parts: Part[]; problems: Problem[] } {
	const problems: Problem[] = [];
	const parts = job.parts.flatMap((p, i) => {
		const wrong = misfit(p, i, job.shop.ruler);
		if (wrong) problems.push(wrong);
		return wrong ? [] : [toPart(p, job)];
	});
	return { parts, problems };
}

/** An outline is drawn inside its part's rectangle, corner at 0,0. */
function misfit(p: LoosePart, i: number, ruler: Ruler): Problem | null {
	if (!p.outline) return null;
	const box = bounds(p.outline);
	const inside =
		box.x >= 0 && box.y >= 0 && box.x + box.length <= p.length && box.y + box.width <= p.width;
	if (inside) return null;
	const size = (l: number, w: number): string => sayLengths([l, w], ruler, ' x ');
	const from = sayLengths([box.x, box.y], ruler, ', ').replace(/ [a-z]+$/, '');
	const seen = `${size(box.length, box.width)} from ${from}`;
	return {
		path: ['parts', i, 'outline'],
		what: `The outline of ${p.name ?? p.id} takes ${seen}, which leaves its rectangle of ${size(p.length, p.width)}.`,
		fix: 'Move the outline to 0,0 or make length and width large enough.',
		kind: 'stop',
	};
}

function toPart(p: LoosePart, job: Job): Part {
	const material = materialOf(job, p.material);
	// Grain across the part: the same part, named the other way round. An outline is not turned
	// behind the person's back.
	const across = p.grain === 'width' && !p.outline;
	const volume = p.length * p.width * (material?.measured ?? 0);
	return {
		id: `part.${p.id}`,
		label: p.id,
		name: p.name ?? p.id,
		owner: LOOSE,
		material: p.material,
		thickness: material?.measured ?? ticks(0),
		count: p.count,
		length: across ? p.width : p.length,
		width: across ? p.length : p.width,
		...(p.outline ? { outline: p.outline } : {}),
		holes: [],
		grain: p.grain === 'any' ? 'any' : 'length',
		bevels: [],
		face: 'front',
		show: false,
		routed: ticks(p.outline ? Math.round(perimeter(p.outline)) : 0),
		mass: (volume / (1000 * TICKS_PER_MM) ** 3) * (material?.density ?? 0),
		notes: p.note === '' ? [] : [p.note],
	};
}
