import { boundsOfPoints, mirrored, moved, type Outline, type Point } from '../../geometry';
import { nth } from '../../measure';
import type { BoxBoard } from '../box';
import type { Part } from '../part';
import { edgeCuts } from './bevels';
import { facing, facingFrom, type Facing } from './facing';
import { marked } from './form';
import { Numbers } from './numbers';
import type { Operation } from './operation';
import { outlineCut } from './outline-cut';
import type { LetteredEdge, WorkFace, WorkPiece } from './work-piece';

type Hole = BoxBoard['holes'][number];
type Side = Facing['seen'];

/**
 * A board of a box: its edges, then all that is made in the face its part is cut from, measured on
 * the blank before any bevel is cut; then what is made in the other face, measured on that face.
 */
export function boardPiece(board: BoxBoard, part: Part): WorkPiece {
	const f = facing(board);
	const numbers = new Numbers();
	const near = nearFace(f, board, numbers);
	const far = farFace(f, board, numbers);
	return { part, faces: far.operations.length > 0 ? [near, far] : [near] };
}

function nearFace(f: Facing, board: BoxBoard, numbers: Numbers): WorkFace {
	const bevelled = f.edges.some((e) => e.tilt > 0);
	const { x, y } = boundsOfPoints(f.near);
	return {
		seen: f.seen,
		from: 'blank',
		across: f.long.across,
		up: f.long.up,
		outline: f.near,
		behind: bevelled ? f.far : null,
		edges: lettered(f, f.near),
		grain: f.grain,
		through: [],
		operations: [
			...(bevelled ? edgeCuts(f) : outlineCut(f.near, f.long.across, f.long.up)),
			...(f.seen === 'inside' ? rabbetsIn(f, { x: 0, y: 0 }, numbers) : []),
			...holesIn(
				f.holes.filter((h) => h.recess === null || (h.face ?? 'outside') === f.seen),
				numbers,
			),
			...standing(f, board, numbers, (o) => moved(o, x, y)),
		],
	};
}

function farFace(near: Facing, board: BoxBoard, numbers: Numbers): WorkFace {
	const seen: Side = near.seen === 'outside' ? 'inside' : 'outside';
	const f = facingFrom(board, seen);
	const { x, y, length, width } = boundsOfPoints(f.near);
	const home = (o: Outline): Outline => moved(o, -x, -y);
	const recesses = f.holes.filter((h) => h.recess !== null && (h.face ?? 'outside') === seen);
	return {
		seen,
		from: 'face',
		across: length,
		up: width,
		outline: home(f.near),
		behind: null,
		edges: lettered(f, home(f.near)),
		grain: f.grain,
		through: f.holes.filter((h) => h.recess === null).map((h) => home(h.outline)),
		operations: [
			...(seen === 'inside' ? rabbetsIn(f, { x, y }, numbers) : []),
			...holesIn(
				recesses.map((h) => ({
					...h,
					outline: home(h.outline),
					centre: { x: h.centre.x - x, y: h.centre.y - y },
				})),
				numbers,
			),
			...standing(
				{
					...f,
					devices: f.devices.map((d) => ({ ...d, body: home(d.body), space: home(d.space) })),
				},
				board,
				numbers,
			),
		],
	};
}

const lettered = ({ edges }: Facing, outline: Outline): LetteredEdge[] =>
	outline.map((from, k) => ({
		letter: nth(edges, k).letter,
		from,
		to: nth(outline, (k + 1) % outline.length),
	}));

/** Round holes alike and named alike are drilled together; anything else is cut by itself. */
function holesIn(holes: readonly Hole[], numbers: Numbers): Operation[] {
	const groups = new Map<string, Hole[]>();
	holes.forEach((hole, i) => {
		const round = hole.size.length === 1;
		const key = round ? `${hole.of} ${hole.name} ${hole.size[0]} ${hole.recess}` : `${i}`;
		groups.set(key, [...(groups.get(key) ?? []), hole]);
	});
	return [...groups.values()].map((alike): Operation => {
		const { name, size, recess: depth, outline } = nth(alike, 0);
		const n = numbers.take(alike.length);
		if (size.length !== 1) return { kind: 'cut', n, name, ...marked(outline), depth };
		const at = alike.map((h) => h.centre);
		return { kind: 'holes', n, name, diameter: nth(size, 0), depth, at };
	});
}

/** Rabbets are kept as they lie seen from outside, and are cut into the inside. */
function rabbetsIn(f: Facing, { x, y }: Point, numbers: Numbers): Operation[] {
	return f.rabbets.map(({ low, high, deep }) => {
		const seenFromOutside: Outline = [low, { x: high.x, y: low.y }, high, { x: low.x, y: high.y }];
		const outline = moved(mirrored(seenFromOutside, f.long.across / 2), -x, -y);
		return { kind: 'rabbet', n: numbers.take(), ...marked(outline), depth: deep };
	});
}

/** What stands on this face: other boards, and devices. */
function standing(
	f: Facing,
	board: BoxBoard,
	numbers: Numbers,
	place: (o: Outline) => Outline = (o) => o,
): Operation[] {
	const feet = board.placing.filter((p) => p.face === f.seen).flatMap((p) => p.feet);
	return [
		...f.devices
			.filter((d) => d.side === f.seen)
			.map(({ name, body, space }): Operation => ({
				kind: 'place',
				n: numbers.take(),
				name,
				...marked(body),
				space,
			})),
		...feet.map(({ label, name, outline }): Operation => ({
			kind: 'place',
			n: numbers.take(),
			name: `${label} ${name}`,
			...marked(place(outline)),
		})),
	];
}
