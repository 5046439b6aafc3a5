import { nth } from '../../../measure';
import type { Box, Brace, Material, Sundry } from '../../../job';
import { raised, type Frame, type Solid, type Point3 } from '../solid';
import { boardOf, type Board, rodObstacle, type Obstacle, kg, woodOf, type Seam } from '../board';
import type { BoardRack } from '../rack';
import { edgeSeams, type Meeting } from './rooms';
import type { ProblemLog } from '../../problem-log';
import { halve, type Unhalved } from '../halving';
import { windowsIn } from './window';

/** A rod from wall to wall; its ends are cut to the walls. */
export interface Rod {
	readonly name: string;
	readonly diameter: number;
	/** Longest length, ticks. */
	readonly length: number;
	readonly from: Point3;
	readonly to: Point3;
}

/**
 * Cubic ticks a rod takes: cut to leaning walls it loses at one side of its axis what it keeps at
 * the other.
 */
function rodVolume(rod: Rod): number {
	const { from, to } = rod;
	const axis = Math.hypot(to.x - from.x, to.y - from.y, to.z - from.z);
	return Math.PI * (rod.diameter / 2) ** 2 * axis;
}

/**
 * kg/m3 of a beech rod at 12 % moisture: Wood Handbook, FPL-GTR-282 (2021), table 5-3a, specific
 * gravity 0.64. From memory.
 */
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

/** A frame or a shelf as it stands in a chamber, before it is a board. */
export interface PlateBody {
	readonly solid: Solid;
	readonly frame: Frame;
	readonly meets: readonly Meeting[];
	/** Are its edges square? Then its windows follow its outline. */
	readonly square: boolean;
	readonly notes?: string[];
}

/** How one brace is set into one chamber of a form; null where it has no place there. */
interface BraceMaker {
	rod(brace: Dowel, b: number, room: number): Rod | null;
	/** A frame or a shelf of thickness `t`. */
	plate(brace: Plate, room: number, t: number): PlateBody | null;
	/** Says why a brace has no place in any chamber. */
	missed(brace: Brace, b: number): void;
}

/** All braces of a box, each in every chamber that it meets. */
export function braceAll(
	box: Box,
	rooms: number,
	maker: BraceMaker,
	rack: BoardRack,
	log: ProblemLog,
): Braced {
	const boards: Board[] = [];
	const standsIn: number[] = [];
	const rods: Rod[] = [];
	const seams: Seam[] = [];
	const taken = new Array<number>(rooms).fill(0);
	const setRod = (brace: Dowel, b: number, r: number): boolean => {
		const rod = maker.rod(brace, b, r);
		if (rod) rods.push(rod);
		taken[r] = nth(taken, r) + (rod ? rodVolume(rod) : 0);
		return rod !== null;
	};
	const setPlate = (brace: Plate, b: number, r: number, material: Material): boolean => {
		const body = maker.plate(brace, r, material.measured);
		if (!body) return false;
		const board = plateBoard(body, material, braceName(brace, b), boards.length + 1);
		if (brace.kind === 'window') {
			const windows = windowsIn(board, brace, body.square, { log, path: ['braces', b] });
			// It has told that it has none, so that it is not told once more that it has no place.
			if (!windows) return true;
			board.holes.push(...windows);
		}
		boards.push(board);
		standsIn.push(r);
		seams.push(...edgeSeams(board, body.meets, false));
		return true;
	};
	const setIn = (brace: Brace, b: number, room: (r: number) => boolean): void => {
		const met = taken.map((_, r) => room(r));
		if (!met.includes(true)) maker.missed(brace, b);
	};
	box.braces.forEach((brace, b) => {
		if (brace.kind === 'dowel') {
			setIn(brace, b, (r) => setRod(brace, b, r));
			return;
		}
		const material = rack.of(brace.material, ['braces', b, 'material']);
		if (material) setIn(brace, b, (r) => setPlate(brace, b, r, material));
	});
	halve(boards, box.braceFit, (a, b, why) => sayCrossing(a, b, why, log));
	seams.push(...slotSeams(boards));
	boards.forEach((board, i) => {
		const r = nth(standsIn, i);
		taken[r] = nth(taken, r) + woodOf(board);
	});
	const obstacles = rods.map((r) => rodObstacle(r.name, r.from, r.to, r.diameter / 2));
	return { boards, rods, seams, obstacles, taken };
}

/**
 * What is glued in the slots of halved braces: both walls of each, and once for two where their
 * ends meet.
 */
function slotSeams(boards: readonly Board[]): Seam[] {
	return boards.flatMap((board) =>
		board.holes.flatMap(({ halving, centre }): Seam[] => {
			const other = halving && boards.find((b) => b.key === halving.over);
			if (!halving || !other) return [];
			const t = board.material.measured;
			const end = halving.through ? 0 : (t * other.material.measured) / 2;
			return [
				{
					letter: '',
					between: [board.key, other.key],
					kind: 'face',
					length: 0,
					area: 2 * halving.deep * t + end,
					at: raised(centre, board.frame),
					seals: false,
				},
			];
		}),
	);
}

function plateBoard(
	{ solid, frame, notes = [] }: PlateBody,
	material: Material,
	name: string,
	n: number,
): Board {
	return boardOf({
		key: `brace-${n}`,
		wall: null,
		name,
		role: 'brace',
		material,
		solid,
		frame,
		grain: 'along',
		notes,
	});
}

const UNHALVED: Readonly<Record<Unhalved, { why: string; fix: string }>> = {
	'not square': {
		why: '',
		fix: 'Cut each halfway through where they cross, so that they slide together, or move one of them.',
	},
	'ends in it': {
		why: ': one ends within the thickness of the other, and no slot is cut',
		fix: 'Let it reach right through, or stop short.',
	},
	'slots meet': {
		why: ': a slot for both would run into one that is cut already, and none is cut',
		fix: 'Move one of them by more than a board is thick, or leave it out.',
	},
	locked: {
		why: ': with slots they could not be slid together, or one would fall in two, and none is cut',
		fix: 'Move one of them or leave it out, or make it in two pieces.',
	},
};

/** Braces that stand in each other's place and could not be halved. */
function sayCrossing(a: Board, b: Board, why: Unhalved, log: ProblemLog): void {
	const told = UNHALVED[why];
	log.check(['braces'], `${a.name} and ${b.name} cross each other${told.why}.`, told.fix);
}

export const braceName = (brace: Brace, b: number): string =>
	brace.name ??
	`${{ window: 'Window brace', shelf: 'Shelf brace', dowel: 'Rod' }[brace.kind]} ${b + 1}`;
