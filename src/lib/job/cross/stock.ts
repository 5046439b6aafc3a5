import { mm, sayLeast, sayLength, sayLengths, sayMost, toMm, type Ruler } from '../../measure';
import type { Job } from '../job';
import type { Path } from '../problems';
import { doubt, refusal, remark, type Fault } from './fault';
import type { Saw } from '../shop';
import { type Cloth, type Material, type Roll, type StockSheet, offNominal } from '../stock';

/** Figures of the rack and the saws that contradict each other. */
export function oddStock({ stock, shop }: Job): Fault[] {
	const { ruler } = shop;
	return [
		...stock.materials.flatMap((m, i) => thickness(m, ['stock', 'materials', i], ruler)),
		...stock.cloths.flatMap((c, i) => pressed(c, ['stock', 'cloths', i], ruler)),
		...stock.sheets.flatMap((s, i) => leastAndMost(s, ['stock', 'sheets', i])),
		...stock.rolls.flatMap((r, i) => selvedge(r, ['stock', 'rolls', i], ruler)),
		...shop.saws.flatMap((s, i) => blade(s, ['shop', 'saws', i], ruler)),
	];
}

/**
 * A thickness far from its name is planned as measured. Boards of the trade do come like that, so
 * the value is told once and accepted for the board; another one is told again.
 */
function thickness(board: Material, path: Path, ruler: Ruler): Fault[] {
	const band = offNominal(board);
	if (!band || board.accepted === board.measured) return [];
	const limits = `${sayLength(band.low, ruler)} to ${sayLength(band.high, ruler)}`;
	return [
		remark(
			[...path, 'measured'],
			`"${board.name}" is measured at ${sayLength(board.measured, ruler)}, nominal ${sayLength(board.nominal, ruler)}.`,
			`By ${band.source} it would be ${limits}. Measure again; if it is right, accept it for this board.`,
			{ path: [...path, 'accepted'], value: toMm(board.measured) },
		),
	];
}

/** Thicker than a cloth of this trade is, pressed and loose: common practice, no source. */
const THICKEST = { pressed: mm(10), loose: mm(25) } as const;

function pressed(cloth: Cloth, path: Path, ruler: Ruler): Fault[] {
	if (cloth.pressed > cloth.loose)
		return [
			doubt(
				[...path, 'pressed'],
				`"${cloth.name}" is thicker pressed (${sayLength(cloth.pressed, ruler)}) than loose (${sayLength(cloth.loose, ruler)}).`,
				`Give a pressed thickness of ${sayMost(cloth.loose, ruler)} at most.`,
			),
		];
	return [...unlikely(cloth, 'pressed', path, ruler), ...unlikely(cloth, 'loose', path, ruler)];
}

/** A point left out makes ten times the thickness, and every board is cut to it. */
function unlikely(cloth: Cloth, field: 'pressed' | 'loose', path: Path, ruler: Ruler): Fault[] {
	const most = THICKEST[field];
	if (cloth[field] <= most) return [];
	const tenth = mm(toMm(cloth[field]) / 10);
	return [
		doubt(
			[...path, field],
			`"${cloth.name}" is ${sayLength(cloth[field], ruler)} thick ${field}, and every board beside it is cut to that.`,
			`Measure again: cloths are ${sayMost(most, ruler)} ${field} or less. Is ${sayLength(tenth, ruler)} meant?`,
		),
	];
}

/** A blank laid to a width the roll does not have would be cut short: such a roll is not used. */
function selvedge(roll: Roll, path: Path, ruler: Ruler): Fault[] {
	if (roll.usable <= roll.width) return [];
	return [
		refusal(
			[...path, 'usable'],
			`The usable width ${sayLength(roll.usable, ruler)} is more than the width of the roll, ${sayLength(roll.width, ruler)}.`,
			`Give the width less both selvedges, ${sayMost(roll.width, ruler)} at most.`,
		),
	];
}

function leastAndMost(sheet: StockSheet, path: Path): Fault[] {
	if (sheet.buy === null || sheet.buy === 0 || sheet.least <= sheet.buy) return [];
	return [
		doubt(
			[...path, 'least'],
			`At least ${sheet.least} of "${sheet.id}" have to be bought, and at most ${sheet.buy} can be.`,
			`Give ${sheet.buy} or fewer as the least, or more as the most.`,
		),
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

function kerf(saw: Saw, path: Path, ruler: Ruler): Fault[] {
	if (toMm(saw.kerf) <= WIDEST_KERF) return [];
	const at = [...path, 'kerf'];
	const what = `"${saw.name}" has a kerf of ${sayLength(saw.kerf, ruler)}.`;
	const common = sayLengths([mm(1.6), mm(4)], ruler, ' to ');
	const fix = `Measure the width of one cut: common blades take ${common}.`;
	if (!isNoKerf(saw)) return [doubt(at, what, fix)];
	const { problem } = refusal(
		at,
		what,
		`${fix} Until then the plan goes by ${sayLength(USUAL_KERF, ruler)}.`,
	);
	// The saw stays where it is, with the usual kerf.
	return [{ problem, leavesOut: null }];
}

function blade(saw: Saw, path: Path, ruler: Ruler): Fault[] {
	const faults = kerf(saw, path, ruler);
	if (saw.trim > 0 && saw.trim < saw.kerf) {
		faults.push(
			doubt(
				[...path, 'trim'],
				`The first trim of ${sayLength(saw.trim, ruler)} is less than the kerf of ${sayLength(saw.kerf, ruler)} it includes.`,
				`Give ${sayLeast(saw.kerf, ruler)} or more, or 0 for no trim.`,
			),
		);
	}
	if (saw.fenceLimit !== null && saw.narrowestRip !== null && saw.fenceLimit < saw.narrowestRip) {
		faults.push(
			doubt(
				[...path, 'fenceLimit'],
				`The fence reaches ${sayLength(saw.fenceLimit, ruler)}, less than the narrowest rip of ${sayLength(saw.narrowestRip, ruler)}.`,
				'Give how far the fence can be set from the blade.',
			),
		);
	}
	return faults;
}
