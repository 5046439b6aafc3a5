import { mm, showMm, toMm } from '../../measure';
import type { Job } from '../job';
import type { Problem, Path } from '../problems';
import type { Saw } from '../shop';
import { type Cloth, type Material, type Roll, offNominal } from '../stock';

/** Figures of the rack and the saws that contradict each other. */
export function oddStock({ stock, shop }: Job): Problem[] {
	return [
		...stock.materials.flatMap((m, i) => thickness(m, ['stock', 'materials', i])),
		...stock.cloths.flatMap((c, i) => pressed(c, ['stock', 'cloths', i])),
		...stock.rolls.flatMap((r, i) => selvedge(r, ['stock', 'rolls', i])),
		...shop.saws.flatMap((s, i) => blade(s, ['shop', 'saws', i])),
	];
}

/** A thickness far from its name is planned as measured, but it is more often a slip than a board. */
function thickness(board: Material, path: Path): Problem[] {
	const band = offNominal(board);
	if (!band) return [];
	const limits = `${shown(band.low)} to ${shown(band.high)}`;
	return [
		{
			path: [...path, 'measured'],
			what: `"${board.name}" is measured at ${shown(board.measured)}, nominal ${shown(board.nominal)}.`,
			fix: `Measure again: by ${band.source} it would be ${limits}.`,
			kind: 'check',
		},
	];
}

function pressed(cloth: Cloth, path: Path): Problem[] {
	if (cloth.pressed <= cloth.loose) return [];
	return [
		{
			path: [...path, 'pressed'],
			what: `"${cloth.name}" is thicker pressed (${shown(cloth.pressed)}) than loose (${shown(cloth.loose)}).`,
			fix: `Give a pressed thickness of ${shown(cloth.loose)} at most.`,
			kind: 'check',
		},
	];
}

/** A blank laid to a width the roll does not have would be cut short: such a roll is not used. */
function selvedge(roll: Roll, path: Path): Problem[] {
	if (roll.usable <= roll.width) return [];
	return [
		{
			path: [...path, 'usable'],
			what: `The usable width ${shown(roll.usable)} is more than the width of the roll, ${shown(roll.width)}.`,
			fix: `Give the width less both selvedges, ${shown(roll.width)} at most.`,
			kind: 'stop',
		},
	];
}

/** A blade wider than any saw of this trade carries: common practice, no source. */
const WIDEST_KERF = 8; // mm
/** No saw blade at all but a slipped unit: planning by it would waste every sheet. */
const NO_KERF = 25; // mm
/** What stands in for a kerf that is refused: the one a saw has when nothing is said. */
const USUAL_KERF = mm(3.2);

const isNoKerf = (saw: Saw): boolean => toMm(saw.kerf) > NO_KERF;

/** The saws, each with a kerf that can be planned by. */
export function usableSaws(saws: readonly Saw[]): Saw[] {
	return saws.map((saw) => (isNoKerf(saw) ? { ...saw, kerf: USUAL_KERF } : saw));
}

function kerf(saw: Saw, path: Path): Problem[] {
	if (toMm(saw.kerf) <= WIDEST_KERF) return [];
	const fix = 'Measure the width of one cut: common blades take 1.6 to 4 mm.';
	return [
		{
			path: [...path, 'kerf'],
			what: `"${saw.name}" has a kerf of ${shown(saw.kerf)}.`,
			fix: isNoKerf(saw) ? `${fix} Until then the plan goes by ${shown(USUAL_KERF)}.` : fix,
			kind: isNoKerf(saw) ? 'stop' : 'check',
		},
	];
}

function blade(saw: Saw, path: Path): Problem[] {
	const faults = kerf(saw, path);
	if (saw.trim > 0 && saw.trim < saw.kerf) {
		faults.push({
			path: [...path, 'trim'],
			what: `The first trim of ${shown(saw.trim)} is less than the kerf of ${shown(saw.kerf)} it includes.`,
			fix: `Give ${shown(saw.kerf)} or more, or 0 for no trim.`,
			kind: 'check',
		});
	}
	if (saw.fenceLimit !== null && saw.narrowestRip !== null && saw.fenceLimit < saw.narrowestRip) {
		faults.push({
			path: [...path, 'fenceLimit'],
			what: `The fence reaches ${shown(saw.fenceLimit)}, less than the narrowest rip of ${shown(saw.narrowestRip)}.`,
			fix: 'Give how far the fence can be set from the blade.',
			kind: 'check',
		});
	}
	return faults;
}

function shown(length: number): string {
	return `${showMm(length)} mm`;
}
