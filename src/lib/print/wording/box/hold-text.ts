import type { BoxFigures, BoxPlan, PanelPlan } from '../../../design';
import { type Ruler, showMass } from '../../../measure';
import type { Plan } from '../../../plan';
import { clothMass } from '../../../wrap';
import type { Figures } from '../figures';

type Place = NonNullable<BoxFigures['gravity']>;

/** Says who decides how a box is held: never this plan. */
export const HELD_BY =
	'What each point has to bear is not worked out here: local codes say, and a licensed person signs for it.';

/** Where the weight of a box is, and what was counted. */
export function gravityText(
	{ gravity, loadedMass, drivers, radiators, boards, rods }: BoxFigures,
	f: Figures,
	ruler: Ruler,
): string {
	if (!gravity) return '';
	const some = (what: string, list: readonly unknown[]): string[] =>
		list.length > 0 ? [what] : [];
	const framed = [...some('drivers', drivers), ...some('radiators', radiators)];
	const devices = boards.flatMap((b) => b.devices);
	const weighed = ['boards', ...some('rods', rods), ...framed, ...some('devices', devices)];
	const taken = [
		...(framed.length > 0
			? [`${listed(framed)} taken two thirds of their depth behind the flange`]
			: []),
		...(devices.length > 0 ? ['devices at the middle of their bodies'] : []),
	];
	return [
		`${showMass(loadedMass, ruler)} loaded (${listed(weighed)}), its centre of gravity ${placeText(gravity, f)} of the outside; cloth, lining, wires and fasteners not counted`,
		...taken,
	].join(', ');
}

/** Boards, drivers and devices. */
const listed = (all: readonly string[]): string =>
	all.length < 2 ? all.join() : `${all.slice(0, -1).join(', ')} and ${all.slice(-1).join()}`;

const placeText = ({ across, back, up }: Place, f: Figures): string =>
	`${f.bench(across)} from the left, ${f.bench(back)} from the front and ${f.bench(up)} from the bottom`;

/** Rows of a table of tie-down points under these heads. */
export const TIE_DOWN_HEADS = ['Tie-down', 'Board', 'Left', 'Front', 'Bottom', 'Hole'] as const;

export function tieDownRows({ tieDowns }: BoxFigures, f: Figures): string[][] {
	return tieDowns.map(({ name, board, place, hole }) => [
		name,
		board,
		f.bench(place.across),
		f.bench(place.back),
		f.bench(place.up),
		hole === null ? 'none' : f.bench(hole),
	]);
}

type Weighed = Pick<Plan, 'job' | 'blanks'>;

/** Cloth on one box of its kind, kg. */
const clothOnBox = ({ job, blanks }: Weighed, id: string): number =>
	clothMass(blanks, id) / (job.boxes.find((b) => b.id === id)?.count ?? 1);

/** What one box weighs as it is lifted: boards, rods, drivers, and its cloth if it has any. */
export function boxMassText(plan: Weighed, box: BoxPlan, ruler: Ruler): string {
	const cloth = clothOnBox(plan, box.id);
	const mass = showMass(boxMass(plan, box), ruler);
	const devices = box.figures?.boards.some((b) => b.devices.length > 0);
	const counted = ['drivers', ...(devices ? ['devices'] : []), ...(cloth > 0 ? ['cloth'] : [])];
	return `${mass} with ${listed(counted)}`;
}

/** The same in kg. */
export const boxMass = (plan: Weighed, box: BoxPlan): number =>
	(box.figures?.loadedMass ?? box.mass) + clothOnBox(plan, box.id);

/** What one panel weighs: its boards, its cloth if any; no foam, no fittings. */
export function panelMassText(plan: Weighed, panel: PanelPlan, ruler: Ruler): string {
	const cloth = clothMass(plan.blanks, panel.id);
	return `${showMass(panelMass(plan, panel), ruler)} ${cloth > 0 ? 'with cloth' : 'of board'}`;
}

/** The same in kg. */
export function panelMass(plan: Weighed, panel: PanelPlan): number {
	const asked = plan.job.panels.find((p) => p.id === panel.id);
	const made = (asked?.count ?? 1) * (asked?.pair === 'both' ? 2 : 1);
	const boards = panel.parts.reduce((sum, p) => sum + p.mass * p.count, 0) / made;
	return boards + clothMass(plan.blanks, panel.id) / made;
}
