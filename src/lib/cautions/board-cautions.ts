import { personsFor, type Part } from '../design';
import type { Job, Material } from '../job';
import type { BoardLayouts } from '../layout';
import { mm, TICKS_PER_MM, roundMass, type Ruler } from '../measure';
import type { Caution } from './caution';
import {
	COMMON,
	DUST_SOURCE,
	FORMALDEHYDE_SOURCE,
	LIFT_SOURCE,
	SMALL_LENGTH_MM,
	SMALL_SOURCE,
	SMALL_WIDTH_MM,
	SPREADER_SOURCE,
} from './rules';

/** Cubic metres in a cubic tick: density is in kg/m3. */
const M3_PER_TICK3 = 1 / (1000 * TICKS_PER_MM) ** 3;

/**
 * Cautions of cutting boards: saw, small parts, dust, board resin, sheets too heavy for one person.
 */
export function boardCautions(
	job: Job,
	parts: readonly Part[],
	boards: readonly BoardLayouts[],
): Caution[] {
	if (boards.every((b) => b.answer.layouts.length === 0)) return [];
	const materials = job.stock.materials.filter((m) => boards.some((b) => b.material === m.id));
	return [
		...(job.shop.method === 'saw' ? [saw(), ...smallParts(boards)] : [router()]),
		...bevels(parts),
		dust(),
		...resin(materials),
		...heavySheets(materials, boards, job.shop.ruler),
	];
}

function saw(): Caution {
	return {
		id: 'saw',
		title: 'Saw.',
		text: 'Guard and spreader on, fence or mitre gauge but never both for one cut, hands well clear of the blade, eye and ear protection. Unplug before changing the blade.',
		source: `${SPREADER_SOURCE} Fence and gauge: common practice, no source.`,
		where: ['summary', 'sheets'],
		about: [],
	};
}

function router(): Caution {
	return {
		id: 'router',
		title: 'Router.',
		text: 'Clamp the sheet and tab or screw small parts down before they come free. Feed against the turn of the bit. Eye and ear protection.',
		source: COMMON,
		where: ['summary', 'sheets'],
		about: [],
	};
}

/** Pieces that are small when the saw parts them from the rest. */
function smallParts(boards: readonly BoardLayouts[]): Caution[] {
	const small = boards.flatMap((b) =>
		b.answer.layouts.flatMap((l, i) =>
			l.placed
				.filter(
					(p) =>
						Math.min(p.length, p.width) < mm(SMALL_WIDTH_MM) ||
						Math.max(p.length, p.width) < mm(SMALL_LENGTH_MM),
				)
				.map((p) => ({ part: `part:${p.id}`, sheet: `sheet:${b.material}/${i}` })),
		),
	);
	if (small.length === 0) return [];
	return [
		{
			id: 'small-parts',
			title: 'Small parts.',
			text: `Some parts are under ${Math.round(SMALL_WIDTH_MM)} mm (6 in) wide or under ${Math.round(SMALL_LENGTH_MM)} mm (12 in) long. Use a push stick or a sled, or cut them oversize with their neighbour and trim.`,
			source: SMALL_SOURCE,
			where: ['summary', 'sheets', 'parts'],
			about: [...new Set(small.flatMap((s) => [s.part, s.sheet]))],
		},
	];
}

function bevels(parts: readonly Part[]): Caution[] {
	const tilted = parts.filter((p) => p.bevels.some((b) => b.tilt > 0));
	const alike = tilted.filter((p) => p.shift);
	return [...longFaces(tilted.filter((p) => !p.shift)), ...parallelBevels(alike)];
}

/** Both bevels lean the same way: to measure a LONG face would make the board too long. */
function parallelBevels(parts: readonly Part[]): Caution[] {
	if (parts.length === 0) return [];
	return [
		{
			id: 'parallel-bevels',
			title: 'Parallel bevels.',
			text: 'Both bevels of a board lean the same way, so no face is LONG: cut the blank square to its size, then tilt the blade. Measure either face from edge to edge against the size of the faces, and the whole board from sharp edge to sharp edge, square to them, against the blank. Keep the offcut side free so that it cannot jam under the tilted blade; try the tilt on scrap.',
			source: COMMON,
			where: ['parts', 'box'],
			about: parts.map((p) => `part:${p.id}`),
		},
	];
}

function longFaces(tilted: readonly Part[]): Caution[] {
	if (tilted.length === 0) return [];
	return [
		{
			id: 'bevel',
			title: 'Tilted blade.',
			text: 'Keep the offcut side free so that it cannot jam under the tilted blade. Try the tilt on scrap and measure the LONG face before cutting the part.',
			source: COMMON,
			where: ['parts', 'box'],
			about: tilted.map((p) => `part:${p.id}`),
		},
	];
}

function dust(): Caution {
	return {
		id: 'dust',
		title: 'Dust.',
		text: 'Wood dust causes cancer and lung disease. Extract at the tool, wear a fitted dust mask, do not sweep dry.',
		source: DUST_SOURCE,
		where: ['summary', 'sheets'],
		about: [],
	};
}

function resin(materials: readonly Material[]): Caution[] {
	const bound = materials.filter((m) => ['mdf', 'particleboard', 'plywood'].includes(m.kind));
	if (bound.length === 0) return [];
	return [
		{
			id: 'formaldehyde',
			title: 'Board resin.',
			text: `${bound.map((m) => m.name).join(', ')}: the glue in these boards can give off formaldehyde, most of all in hot dust. Ask for boards within the emission limits, and air the shop.`,
			source: FORMALDEHYDE_SOURCE,
			where: ['summary'],
			about: bound.map((m) => `material:${m.id}`),
		},
	];
}

/** Sheets heavier than one person should lift, with their mass. */
function heavySheets(
	materials: readonly Material[],
	boards: readonly BoardLayouts[],
	ruler: Ruler,
): Caution[] {
	return materials.flatMap((m): Caution[] => {
		const layouts = boards.filter((b) => b.material === m.id).flatMap((b) => b.answer.layouts);
		const mass = Math.max(
			0,
			...layouts.map((l) => l.length * l.width * m.measured * m.density * M3_PER_TICK3),
		);
		if (personsFor(mass) < 2) return [];
		return [
			{
				id: `heavy-sheet-${m.id}`,
				title: 'Two people.',
				text: `A sheet of ${m.name} weighs about ${roundMass(mass, ruler)}. Lift it with two people or a cart, and support it on both sides of the saw.`,
				source: LIFT_SOURCE,
				where: ['summary', 'sheets'],
				about: [`material:${m.id}`],
			},
		];
	});
}
