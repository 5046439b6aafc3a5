import type { TextMark } from './drawing';
import type { Bounds } from './bounds';
import { ringRunsInto } from './clip';
import type { Spot } from './path';
import { CAP, DESCENT, textWidth } from './text-width';

/** Where a text of this width starts along its baseline, counted from its anchor. */
export function startOf(anchor: TextMark['anchor'], width: number): number {
	return anchor === 'middle' ? -width / 2 : anchor === 'end' ? -width : 0;
}

/** The upright rectangle round a text's letters (capitals and descenders), however it is turned. */
export function textBox(mark: TextMark): Bounds {
	const width = textWidth(mark.text, mark.size, mark.weight);
	const start = startOf(mark.anchor, width);
	const turn = ((mark.turn ?? 0) * Math.PI) / 180;
	const corner = (along: number, up: number): Spot => ({
		x: mark.x + along * Math.cos(turn) - up * Math.sin(turn),
		y: mark.y - along * Math.sin(turn) - up * Math.cos(turn),
	});
	const up = mark.size * CAP;
	const down = -mark.size * DESCENT;
	return round([
		corner(start, down),
		corner(start + width, down),
		corner(start, up),
		corner(start + width, up),
	]);
}

export function round(spots: readonly Spot[]): Bounds {
	const xs = spots.map((s) => s.x);
	const ys = spots.map((s) => s.y);
	const x = Math.min(...xs);
	const y = Math.min(...ys);
	return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

/** Do they overlap by more than a hair (`slack` mm)? */
export function overlap(a: Bounds, b: Bounds, slack = 0): boolean {
	return (
		a.x + slack < b.x + b.width &&
		b.x + slack < a.x + a.width &&
		a.y + slack < b.y + b.height &&
		b.y + slack < a.y + a.height
	);
}

/** Is the box wholly inside the ring? */
export function boxInRing(box: Bounds, ring: readonly Spot[]): boolean {
	return inRing(box, ring) && !ringRunsInto(ring, box);
}

/** Is the box wholly outside the ring, and the ring not inside the box? */
export function boxOffRing(box: Bounds, ring: readonly Spot[]): boolean {
	return !inRing(box, ring) && !ringRunsInto(ring, box);
}

export function inRing(p: Spot, ring: readonly Spot[]): boolean {
	let inside = false;
	let a = ring.at(-1);
	// A plain loop: this is asked of thousands of spots.
	for (const b of ring) {
		if (a && b.y > p.y !== a.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x))
			inside = !inside;
		a = b;
	}
	return inside;
}
