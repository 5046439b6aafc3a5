import type { BoxPlan, PanelPlan, Part } from '../../design';
import { printMoney, type Ruler, showLength, showVolume } from '../../measure';
import type { Plan } from '../../plan';

/** A figure that is another in two plans of one job; null where one of them has none. */
export interface Moved {
	readonly what: string;
	readonly before: string | null;
	readonly after: string | null;
}

/**
 * All that a change moves, a line each: parts with their holes and slots, litres, vents, outside
 * sizes, steps of panels, sheets, money. In the order of the parts, then box by box.
 */
export function movedBetween(before: Plan, after: Plan): Moved[] {
	const [old, now] = [figuresIn(before), figuresIn(after)];
	return [...new Set([...old.keys(), ...now.keys()])]
		.map((what) => ({ what, before: old.get(what) ?? null, after: now.get(what) ?? null }))
		.filter(({ before, after }) => before !== after)
		.map(({ what, before, after }) => ({ what, before: bare(before), after: bare(after) }));
}

/** What no person reads stands behind this sign and only tells two figures apart. */
const BEHIND = '\u0000';
const bare = (text: string | null): string | null => text?.split(BEHIND)[0] ?? null;

function figuresIn(plan: Plan): Map<string, string> {
	const { ruler, currency } = plan.job.shop;
	const money = (amount: Parameters<typeof printMoney>[0]): string =>
		printMoney(amount, currency, ruler.decimal);
	return new Map([
		...plan.parts.flatMap((p) => partFigures(p, ruler)),
		...plan.boxes.flatMap((b) => boxFigures(b, ruler)),
		...plan.panels.flatMap((p) => panelFigures(p, ruler)),
		...plan.boards.map(
			(b) => [`Sheets of ${b.material}`, String(b.answer.layouts.length)] as const,
		),
		['Order', money(plan.order.total)],
		['Quote', money(plan.quote.total)],
	]);
}

type Figure = readonly [what: string, figure: string];

/** Its sizes are read; of holes, slots, bevels and outline only that they are others. */
function partFigures(part: Part, ruler: Ruler): Figure[] {
	const { id, label, name, length, width, thickness, mass, count, ...rest } = part;
	const say = (l: Part['length']): string => showLength(l, ruler);
	const marked = label === name ? label : `${label} ${name}`;
	const what = `${marked} (${id})`;
	return [
		[what, `${count} of ${say(length)} × ${say(width)}, ${say(thickness)} thick`],
		[`${what}: holes, slots and edges`, `as drawn${BEHIND}${JSON.stringify(rest)}`],
		[`${what}: mass`, `${mass.toFixed(2)} kg`],
	];
}

function boxFigures({ name, id, figures }: BoxPlan, ruler: Ruler): Figure[] {
	if (!figures) return [];
	const say = (l: Part['length']): string => showLength(l, ruler);
	const { outside, chambers, vents } = figures;
	const at = `${name} (${id})`;
	const several = chambers.length > 1;
	return [
		[`${at}: outside`, `${say(outside.width)} × ${say(outside.height)} × ${say(outside.depth)}`],
		...chambers.flatMap((c): Figure[] => [
			[`${at}: gross${several ? ` of chamber ${c.number}` : ''}`, showVolume(c.gross, ruler)],
			[`${at}: net${several ? ` of chamber ${c.number}` : ''}`, showVolume(c.net, ruler)],
		]),
		...vents.flatMap((v, i): Figure[] => [
			[`${at}: vent ${i + 1}, ${v.name}, long`, say(v.length)],
			[
				`${at}: vent ${i + 1}, ${v.name}, tuned to`,
				v.tuning === null ? 'not worked out' : `${v.tuning.toFixed(1)} Hz`,
			],
		]),
	];
}

function panelFigures({ name, id, detail }: PanelPlan, ruler: Ruler): Figure[] {
	if (!detail) return [];
	const at = `${name} (${id})`;
	return detail.layers.flatMap((layer): Figure[] => [
		[`${at}: step of ${layer.name}`, showLength(layer.step, ruler)],
		[`${at}: depth of the seat of ${layer.name}`, showLength(layer.depth, ruler)],
	]);
}
