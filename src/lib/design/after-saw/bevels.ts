import { nth, around } from '../../measure';
import type { Point } from '../../geometry';
import { sideOf } from '../box';
import type { Facing } from './facing';
import type { BevelCut, CutLine, EdgeName, Operation, PartFace } from './operation';

/** Under so many degrees an edge runs along its side. */
const STRAIGHT = 0.02;
/** Ticks within which an edge lies on the blank's own. */
const ON_EDGE = 3;

interface EdgeCut extends EdgeName {
	readonly tilt: number;
	readonly mitre: number;
	readonly up: PartFace;
	/** The edge on the face that lies up, and on the one on the table, both as `near` is seen. */
	readonly upper: CutLine;
	readonly lower: CutLine;
}

/**
 * The cuts that make the edges of a board whose faces are not alike, in order: across the grain
 * first, so that the later cuts take off what broke out. Common practice, no source.
 */
export function edgeCuts(f: Facing): Operation[] {
	const cuts = f.near.map((_, k) => edgeCut(f, k));
	const cross = f.grain === 'up' ? ['bottom', 'top'] : ['left', 'right'];
	const first = (c: EdgeCut): number => (cross.includes(c.side) ? 0 : 1);
	const ordered = [...cuts].sort((a, b) => first(a) - first(b));
	const done: EdgeCut[] = [];
	return ordered.flatMap((cut): Operation[] => {
		const made = operationOf(cut, f, cuts, done);
		if (made?.kind === 'bevel') done.push(cut);
		return made ? [made] : [];
	});
}

function edgeCut(f: Facing, k: number): EdgeCut {
	const { letter, tilt, long } = nth(f.edges, k);
	const line = (face: Facing['near']): CutLine => [nth(face, k), around(face, k + 1)];
	const [near, far] = [line(f.near), line(f.far)];
	const here = long === f.seen;
	return {
		letter,
		tilt,
		...sideOf(...near),
		up: long,
		upper: here ? near : far,
		lower: here ? far : near,
	};
}

function operationOf(
	cut: EdgeCut,
	f: Facing,
	all: readonly EdgeCut[],
	done: readonly EdgeCut[],
): Operation | null {
	const edge = { letter: cut.letter, side: cut.side };
	if (cut.tilt > 0) return bevelOf(cut, f, all, done);
	return onBlank(cut, f) ? null : { kind: 'edge', edge, line: cut.upper };
}

function onBlank({ side, upper }: EdgeCut, { long }: Facing): boolean {
	const level = side === 'left' || side === 'right';
	const at = { left: 0, bottom: 0, right: long.across, top: long.up }[side];
	return upper.every((p) => Math.abs((level ? p.x : p.y) - at) < ON_EDGE);
}

const OPPOSITE = { left: 'right', right: 'left', bottom: 'top', top: 'bottom' } as const;

function bevelOf(
	cut: EdgeCut,
	f: Facing,
	all: readonly EdgeCut[],
	done: readonly EdgeCut[],
): BevelCut {
	const { letter, side, tilt, mitre, up } = cut;
	const across = side === 'left' || side === 'right';
	const straight = mitre < STRAIGHT;
	const fence = straight
		? all.find((c) => c.side === OPPOSITE[side] && c.mitre < STRAIGHT)
		: undefined;
	const common = {
		kind: 'bevel' as const,
		edge: { letter, side },
		tilt,
		mitre: straight ? 0 : mitre,
		up,
		sharp: (f.shift?.offset[across ? 'across' : 'up'] ?? 0) > 0,
	};
	if (!fence) return { ...common, set: { by: 'line', line: asSeen(cut.upper, up, f) } };
	return {
		...common,
		set: {
			by: 'fence',
			distance: fromFence(nth(cut.lower, 0), side, f),
			against: { letter: fence.letter, side: fence.side },
			slips: done.includes(fence) && fence.up !== up,
		},
	};
}

/** From the far edge of the blank to a point of the edge, square to it. */
function fromFence(p: Point, side: EdgeName['side'], { long }: Facing): number {
	switch (side) {
		case 'left':
			return long.across - p.x;
		case 'right':
			return p.x;
		case 'bottom':
			return long.up - p.y;
		case 'top':
			return p.y;
	}
}

/** A line with the face that it lies on turned up. */
function asSeen([a, b]: CutLine, face: PartFace, f: Facing): CutLine {
	if (face === f.seen) return [a, b];
	const over = (p: Point): Point => ({ x: f.long.across - p.x, y: p.y });
	return [over(b), over(a)];
}
