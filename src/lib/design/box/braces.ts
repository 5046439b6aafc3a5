import type { Box } from '../../job/box';
import type { Brace } from '../../job/box-inside';
import type { Sundry } from '../../job/stock';
import { apart } from './apart';
import type { Board } from './board';
import { rodObstacle, type Obstacle } from './obstacle';
import { kg, woodOf } from './part-of';
import { edgeSeams, type Meeting } from './rooms';
import type { Seam } from './seam';
import type { Trouble } from './trouble';
import type { Point3 } from './vec';

/** A rod from wall to wall; its ends are cut to the walls. */
export interface Rod {
	readonly name: string;
	readonly diameter: number;
	/** Longest length, ticks. */
	readonly length: number;
	readonly from: Point3;
	readonly to: Point3;
}

/** Cubic ticks a rod takes: cut to leaning walls it loses at one side of its axis what it keeps at the other. */
export function rodVolume(rod: Rod): number {
	const { from, to } = rod;
	const axis = Math.hypot(to.x - from.x, to.y - from.y, to.z - from.z);
	return Math.PI * (rod.diameter / 2) ** 2 * axis;
}

/** kg/m3 of a beech rod at 12 % moisture: Wood Handbook, FPL-GTR-282 (2021), table 5-3a, specific gravity 0.64. From memory. */
const BEECH = 720;

/** kg of one rod, of the rods on the rack. */
export function rodMass(rod: Rod, sundries: readonly Sundry[]): number {
	const own = sundries.find((s) => s.kind === 'dowel' && s.density !== undefined);
	return kg(rodVolume(rod), own?.density ?? BEECH);
}

export interface Braced {
	readonly boards: readonly Board[];
	readonly rods: readonly Rod[];
	readonly seams: readonly Seam[];
	readonly obstacles: readonly Obstacle[];
	/** Cubic ticks taken from each chamber. */
	readonly taken: readonly number[];
}

export type Plate = Exclude<Brace, { kind: 'dowel' }>;

export type Dowel = Extract<Brace, { kind: 'dowel' }>;

/** How one brace is set into one chamber of a form; null where it has no place there. */
export interface BraceMaker {
	rod(brace: Dowel, b: number, room: number): Rod | null;
	plate(
		brace: Plate,
		b: number,
		room: number,
		key: string,
	): { readonly board: Board; readonly meets: readonly Meeting[] } | null;
	/** Says why a brace has no place in any chamber. */
	missed(brace: Brace, b: number): void;
}

/** All braces of a box, each in every chamber that it meets. */
export function braceAll(box: Box, rooms: number, maker: BraceMaker, trouble: Trouble): Braced {
	const boards: Board[] = [];
	const rods: Rod[] = [];
	const seams: Seam[] = [];
	const taken = new Array<number>(rooms).fill(0);
	const set = (brace: Brace, b: number, r: number): boolean => {
		if (brace.kind === 'dowel') {
			const rod = maker.rod(brace, b, r);
			if (rod) rods.push(rod);
			taken[r]! += rod ? rodVolume(rod) : 0;
			return rod !== null;
		}
		const made = maker.plate(brace, b, r, `brace-${boards.length + 1}`);
		if (!made) return false;
		boards.push(made.board);
		seams.push(...edgeSeams(made.board, made.meets, false));
		taken[r]! += woodOf(made.board);
		return true;
	};
	box.braces.forEach((brace, b) => {
		const met = taken.map((_, r) => set(brace, b, r));
		if (!met.includes(true)) maker.missed(brace, b);
	});
	sayCrossing(boards, trouble);
	const obstacles = rods.map((r) => rodObstacle(r.name, r.from, r.to, r.diameter / 2));
	return { boards, rods, seams, obstacles, taken };
}

/** Braces that stand in each other's place; each frame or shelf is looked at as its full board. */
function sayCrossing(boards: readonly Board[], trouble: Trouble): void {
	boards.forEach((a, i) => {
		for (const b of boards.slice(i + 1)) {
			if (apart(a.solid, b.solid)) continue;
			trouble.check(
				['braces'],
				`${a.name} and ${b.name} cross each other.`,
				'Cut each halfway through where they cross, so that they slide together, or move one of them.',
			);
		}
	});
}

export const braceName = (brace: Brace, b: number): string =>
	brace.name ??
	`${{ window: 'Window brace', shelf: 'Shelf brace', dowel: 'Rod' }[brace.kind]} ${b + 1}`;
