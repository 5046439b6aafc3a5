import { clothName, materialName, rollOf } from '../../job';
import { nth } from '../../measure';
import type { BoardLayouts, RollLayout } from '../../layout';
import type { Placed } from '../../nest';
import { rectangle } from '../../geometry';
import type { Plan } from '../../plan';
import { lain } from '../marks';
import type { Figures } from '../wording';
import { BACK_SEEN, linesOfBlank } from './blank';
import { linesOfPart } from './part';
import type { MachineDrawing, MachineLine, MachineText } from './machine-drawing';

/* Whole sheets for the router and whole rolls for the cutter, everything where the plan lays it. */

/** The sheets of one board that a router cuts; none of a layout that failed its audit. */
export function routedSheets(plan: Plan, boards: BoardLayouts, figures: Figures): MachineDrawing[] {
	if (boards.problem.method !== 'router' || boards.faults.length > 0) return [];
	const { layouts } = boards.answer;
	return layouts.map((layout, i) => {
		const laid = layout.placed.map((at) => laidDown(partAt(plan, at), at));
		const name = materialName(plan.job, boards.material);
		return {
			name: `sheet-${boards.material}-${i + 1}`,
			title: `${name}, sheet ${i + 1} of ${layouts.length}`,
			length: layout.length,
			width: layout.width,
			lines: [edge(layout), ...laid.flatMap(({ lines }) => lines)],
			notes: [
				`${name}, sheet ${i + 1} of ${layouts.length}: ${nth(boards.sources, i).name}`,
				`${figures.size(layout.length, layout.width)}, ${layout.placed.length} parts, faces up as each part is drawn by itself`,
			],
			texts: laid.map(({ text }) => text),
		};
	});
}

/** One roll with its blanks; none of a layout that failed its audit. */
export function rollForMachine(plan: Plan, roll: RollLayout, figures: Figures): MachineDrawing[] {
	if (roll.faults.length > 0 || roll.answer.placed.length === 0) return [];
	const length = Math.max(roll.pull, roll.answer.length);
	const { width } = roll.problem;
	const laid = roll.answer.placed.map((at) => laidDown(blankAt(plan, at), at));
	const cloth = rollOf(plan.job, roll.roll)?.cloth ?? '';
	return [
		{
			name: `roll-${roll.roll}`,
			title: `${clothName(plan.job, cloth)}, roll ${roll.roll}`,
			length,
			width,
			lines: [edge({ length, width }), ...laid.flatMap(({ lines }) => lines)],
			notes: [
				`${clothName(plan.job, cloth)}, roll ${roll.roll}: ${figures.size(length, width)}`,
				`${BACK_SEEN}. x runs along the roll, its usable width only`,
			],
			texts: laid.map(({ text }) => text),
		},
	];
}

interface Thing {
	readonly label: string;
	readonly length: number;
	readonly width: number;
	readonly lines: readonly MachineLine[];
}

/** A sheet that is pinned may hold a part that the job has no more: its rectangle is known. */
function partAt(plan: Plan, { id, length, width, turn }: Placed): Thing {
	const part = plan.parts.find((p) => p.id === id);
	if (part) return { ...part, lines: linesOfPart(part) };
	const [long, wide] = turn % 180 === 0 ? [length, width] : [width, length];
	const outline = rectangle(0, 0, long, wide);
	const lines = [{ layer: 'CUT_OUTSIDE', line: outline, closed: true } as const];
	return { label: id, length: long, width: wide, lines };
}

function blankAt(plan: Plan, { id }: Placed): Thing {
	const blank = plan.blanks.find((b) => b.id === id);
	if (!blank) throw new Error(`bug: ${id} is on a roll but is no blank`);
	return { ...blank, lines: linesOfBlank(blank) };
}

/** Height of a label, ticks: less on what is small. */
const LABEL = 16_000;

function laidDown(
	thing: Thing,
	at: Placed,
): { readonly lines: MachineLine[]; readonly text: MachineText } {
	const size = Math.min(LABEL, at.length / 6, at.width / 3);
	return {
		lines: thing.lines.map((l) => ({ ...l, line: lain(l.line, thing, at) })),
		text: { at: { x: at.x + at.length / 2, y: at.y + at.width / 2 }, size, text: thing.label },
	};
}

function edge({ length, width }: { readonly length: number; readonly width: number }): MachineLine {
	return { layer: 'STOCK', line: rectangle(0, 0, length, width), closed: true };
}
