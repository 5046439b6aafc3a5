import { type Box, clothOf, clothOnFace, type Job } from '../../../../job';
import { type Length, ticks } from '../../../../measure';
import type { Board } from '../../board';
import { dot3, type Point3 } from '../../solid';

/** How thick the loose cloth on a face lies, ticks; 0 where it is bare. */
export type ClothOn = (face: string) => number;

/** The cloth a box is to be covered with, face by face. */
export function clothOn(job: Job, { carpet }: Pick<Box, 'carpet'>): ClothOn {
	return (face) => (carpet ? (clothOf(job, clothOnFace(carpet, face))?.loose ?? 0) : 0);
}

/** What the cloth adds to a box each way, ticks. */
export interface ClothRound {
	readonly width: readonly [left: number, right: number];
	readonly depth: readonly [front: number, back: number];
	readonly height: readonly [bottom: number, top: number];
	/** The thickest of it. */
	readonly most: Length;
}

/**
 * A face looks the way it is turned to within sixty degrees: a corner cut at 45 looks both ways.
 */
const FACING = 0.5;

/**
 * What the cloth adds to a box each way: that on the faces which look that way and reach about as
 * far as any board does. About, for a face goes on over the bevelled edge of the board beside it.
 */
export function clothRound(boards: readonly Board[], on: ClothOn): ClothRound {
	const way = (out: Point3): number => {
		const reach = (b: Board) => Math.max(...b.solid.outside.map((p) => dot3(p, out)));
		const far = Math.max(...boards.map(reach));
		const faces = boards.filter(
			(b) => dot3(b.frame.n, out) > FACING && reach(b) + 2 * b.material.measured >= far,
		);
		return Math.max(0, ...faces.map((b) => on(b.wall ?? b.key)));
	};
	const both = (x: number, y: number, z: number) =>
		[way({ x: -x, y: -y, z: -z }), way({ x, y, z })] as const;
	return {
		width: both(1, 0, 0),
		depth: both(0, 1, 0),
		height: both(0, 0, 1),
		most: ticks(Math.max(0, ...boards.map((b) => on(b.wall ?? b.key)))),
	};
}

/** Both sides of it together. */
export const sum = ([a, b]: readonly [number, number]): number => a + b;
