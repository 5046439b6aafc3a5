import type { Outline, Point } from '../../lib/geometry';
import type { FaceSize, Part } from '../../lib/design';
import type { OrderLine, Quote } from '../../lib/estimate';
import type { BoardLayouts, ClothLayouts } from '../../lib/layout';
import { toMm, majorMoney } from '../../lib/measure';
import type { Plan } from '../../lib/plan';
import type { Blank } from '../../lib/wrap';
import { layoutJson, rollJson } from '../nest';
import { problemJson } from '../print-problems';

/** Minor units as an amount in the currency itself. */
type InMajor = (amount: number) => number;

/**
 * The plan as plain data for other programs: lengths in millimetres, money in the job's currency,
 * masses in kilograms.
 */
export function planJson(plan: Plan): object {
	const { job } = plan;
	const inMajor: InMajor = (amount) => majorMoney(amount, job.shop.currency);
	return {
		job: {
			name: job.name,
			number: job.number,
			revision: job.revision,
			currency: job.shop.currency,
		},
		problems: plan.problems.map(problemJson),
		boxes: plan.boxes.map(({ id, name, mass, figures }) => ({
			id,
			name,
			mass,
			litres: figures?.chambers.map((chamber) => chamber.net) ?? [],
		})),
		panels: plan.panels.map(({ id, name }) => ({ id, name })),
		parts: plan.parts.map(partJson),
		blanks: plan.blanks.map(blankJson),
		boards: plan.boards.map((boards) => boardsJson(boards, inMajor)),
		cloths: plan.cloths.map(clothJson),
		order: {
			lines: plan.order.lines.map((line) => orderJson(line, inMajor)),
			total: inMajor(plan.order.total),
		},
		quote: quoteJson(plan.quote, inMajor),
		cautions: plan.cautions,
		looked: plan.search,
	};
}

function partJson(part: Part): object {
	return {
		...part,
		thickness: toMm(part.thickness),
		length: toMm(part.length),
		width: toMm(part.width),
		...(part.short ? { short: sizeJson(part.short) } : {}),
		...(part.shift
			? {
					shift: {
						outside: sizeJson(part.shift.outside),
						inside: sizeJson(part.shift.inside),
						offset: sizeJson(part.shift.offset),
					},
				}
			: {}),
		...(part.outline ? { outline: outlineJson(part.outline) } : {}),
		holes: part.holes.map(outlineJson),
		routed: toMm(part.routed),
	};
}

function sizeJson({ length, width }: FaceSize): { length: number; width: number } {
	return { length: toMm(length), width: toMm(width) };
}

function blankJson(blank: Blank): object {
	const { id, label, name, owner, covers, cloth, count, lot, reliefs, notes } = blank;
	return {
		...{ id, label, name, owner, covers, cloth, count, lot, reliefs, notes },
		length: toMm(blank.length),
		width: toMm(blank.width),
		outline: outlineJson(blank.outline),
		marks: blank.marks.map((mark) => ({
			kind: mark.kind,
			line: mark.line.map(pointJson),
			closed: mark.closed,
		})),
	};
}

function boardsJson(
	{ material, problem, answer, sources, faults }: BoardLayouts,
	inMajor: InMajor,
): object {
	return {
		material,
		method: problem.method,
		layouts: answer.layouts.map((layout, i) => ({ ...layoutJson(layout), from: sources[i] })),
		unplaced: answer.unplaced,
		cost: inMajor(answer.cost),
		bound: { sheets: answer.bound.sheets, cost: inMajor(answer.bound.cost) },
		proven: answer.proven,
		effort: answer.effort,
		faults,
	};
}

function clothJson({ cloth, rolls, unplaced }: ClothLayouts): object {
	return {
		cloth,
		rolls: rolls.map(({ roll, answer, pull, napless, owned, faults }) => {
			const laid = rollJson(answer);
			return { roll, pull: toMm(pull), napless: toMm(napless), owned, ...laid, faults };
		}),
		unplaced,
	};
}

function orderJson(line: OrderLine, inMajor: InMajor): object {
	const { pack, group } = line;
	return {
		...line,
		pack: group === 'cloth' ? toMm(pack) : pack,
		each: inMajor(line.each),
		total: inMajor(line.total),
	};
}

function quoteJson(quote: Quote, inMajor: InMajor): object {
	const { labour, lines, markup, margin, ...amounts } = quote;
	return {
		...Object.fromEntries(Object.entries(amounts).map(([key, amount]) => [key, inMajor(amount)])),
		markup,
		margin,
		labour: labour.map((line) => ({ ...line, cost: inMajor(line.cost) })),
		lines: lines.map(({ what, price }) => ({ what, price: inMajor(price) })),
	};
}

function outlineJson(outline: Outline): object[] {
	return outline.map((corner) => ({
		...pointJson(corner),
		...(corner.bulge ? { bulge: corner.bulge } : {}),
	}));
}

function pointJson({ x, y }: Point): { x: number; y: number } {
	return { x: toMm(x), y: toMm(y) };
}
