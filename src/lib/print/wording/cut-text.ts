import type { Part } from '../../design';
import type { Rect } from '../../geometry';
import { offcutLabels, type BoardLayouts } from '../../layout';
import type { Cut, Gives } from '../../nest';
import type { Plan } from '../../plan';
import type { Figures } from './figures';

/** Words of one sheet's cuts, the same on paper, on screen and in a spreadsheet. */
export interface SheetAt {
	readonly plan: Plan;
	readonly boards: BoardLayouts;
	readonly index: number;
}

const KINDS: Readonly<Record<Cut['kind'], string>> = {
	trim: 'trim',
	rip: 'rip',
	cross: 'crosscut',
	slant: 'slant',
};

export function cutKind(cut: Cut): string {
	return KINDS[cut.kind];
}

/** 'left: B1; right: strip for cut 4', or 'right: strip A, cut 4' where the strip has a name. */
export function givesText(
	at: SheetAt,
	cut: Cut,
	figures: Figures,
	strips: ReadonlyMap<number, string> = new Map(),
): string {
	const sides = cut.runs === 'x' ? ['below', 'above'] : ['left', 'right'];
	return cut.gives
		.map((give, i) => [sides[i], giveText(at, give, figures, strips)] as const)
		.filter(([, what]) => what !== '')
		.map(([side, what]) => `${side}: ${what}`)
		.join('; ');
}

function giveText(
	at: SheetAt,
	give: Gives,
	figures: Figures,
	strips: ReadonlyMap<number, string>,
): string {
	switch (give.kind) {
		case 'piece':
			return partLabel(at.plan, give.id ?? '');
		case 'strip':
			return stripText(give.nextCut, strips);
		case 'offcut':
			return `${offcutName(at, give.rect)} ${figures.size(give.rect.length, give.rect.width)}`;
		case 'waste':
			return 'waste';
		case 'nothing':
			return '';
	}
}

function stripText(next: number | undefined, strips: ReadonlyMap<number, string>): string {
	if (next === undefined) return 'rest';
	const name = strips.get(next);
	return name === undefined ? `strip for cut ${next}` : `strip ${name}, cut ${next}`;
}

export function partLabel(plan: Plan, id: string): string {
	return partWithId(plan, id)?.label ?? id;
}

/** A plan never changes: what is asked of it for each of thousands of cuts is worked out once. */
const partsById = new WeakMap<Plan['parts'], ReadonlyMap<string, Part>>();
const offcutsOf = new WeakMap<Plan['boards'], ReturnType<typeof offcutLabels>>();

/** The part with this id. */
export function partWithId({ parts }: Plan, id: string): Part | undefined {
	const known = partsById.get(parts) ?? new Map(parts.map((part) => [part.id, part]));
	partsById.set(parts, known);
	return known.get(id);
}

/** The labels the offcuts of a sheet carry on the rack, in their order on the layout. */
export function rackLabels({ plan, boards, index }: SheetAt): readonly string[] {
	const known = offcutsOf.get(plan.boards) ?? offcutLabels(plan.job, plan.boards);
	offcutsOf.set(plan.boards, known);
	return known.get(boards.material)?.[index] ?? [];
}

/** 'offcut R12', for an offcut where it lies on the sheet. */
export function offcutName(at: SheetAt, offcut: Rect): string {
	const offcuts = at.boards.answer.layouts[at.index]?.offcuts ?? [];
	const i = offcuts.findIndex(
		(o) =>
			o.x === offcut.x &&
			o.y === offcut.y &&
			o.length === offcut.length &&
			o.width === offcut.width,
	);
	return `offcut ${rackLabels(at)[i] ?? ''}`.trim();
}
