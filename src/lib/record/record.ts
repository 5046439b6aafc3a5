import { pathText, type Problem, USUAL_CURRENCY, z } from '../job';
import { toMm } from '../measure';
import type { Plan } from '../plan';
import { amountsIn, optionFields, orderFields, quoteFields } from './amounts';
import { boxFields, boxFile } from './box';
import { boardsFields, boardsFile, carpetFields, clothFields, clothFile } from './layouts';
import { panelFields, panelFile } from './panel';
import { blankFields, needFields, partFields } from './pieces';
import { reelFields, runFields } from './runs';
import { togetherFields } from './together';
import { fieldsOf, howMany, listOf, millimetres, oneOf, pure, saying } from './units';

/** Raised when a figure is taken away or means something else; not when one comes to it. */
export const RECORD_VERSION = 2;

const problem = z.strictObject({
	path: saying('where in the job file'),
	what: saying('what is wrong'),
	fix: saying('what would be right'),
	kind: oneOf(
		['stop', 'check', 'note'],
		'left out; planned as asked, look first; nothing wrong, only to be known',
	),
});

const caution = fieldsOf<Plan['cautions'][number]>()({
	id: saying('mark'),
	title: saying('title'),
	text: saying('the caution'),
	source: saying('published source, or common practice'),
	where: listOf(z.string(), 'pages it is printed on'),
	about: listOf(z.string(), 'things it is about'),
});

const recordIn = (currency: string) => {
	const amount = amountsIn(currency);
	return z.strictObject({
		format: z.literal('kerf-and-nap plan'),
		version: z
			.literal(RECORD_VERSION)
			.describe('no unit: another when a figure went or means something else'),
		job: z.strictObject({
			name: saying('name'),
			number: saying('number'),
			revision: saying('revision'),
			currency: saying('three letters of ISO 4217; all amounts are in it'),
		}),
		problems: listOf(problem, 'what is wrong, and notes'),
		boxes: listOf(
			boxFields,
			'boxes; in the frame of a box x runs along its width, y to the back, z up',
		),
		panels: listOf(panelFields, 'panels'),
		parts: listOf(partFields, 'what is cut from boards'),
		blanks: listOf(blankFields, 'what is cut from cloth'),
		carpets: listOf(carpetFields(amount), 'ways of carpeting each box'),
		boards: listOf(boardsFields(amount), 'sheets, board by board'),
		cloths: listOf(clothFields(amount), 'rolls, cloth by cloth'),
		runs: listOf(runFields, 'cables, looms and hoses, by their lengths alone'),
		reels: listOf(reelFields, 'what they are cut from'),
		needs: listOf(needFields, 'what else the work takes'),
		seamLength: millimetres('seams to cut in all the cloth'),
		order: orderFields(amount),
		quote: quoteFields(amount),
		options: listOf(optionFields(amount, problem), 'alternatives offered in the quote'),
		cautions: listOf(caution, 'safety notes'),
		together: togetherFields(amount).nullable(),
		looked: fieldsOf<Plan['search']>()({
			seed: pure('of the search'),
			effort: pure('work units of each search'),
			stopped: howMany('report at which it was ended').nullable(),
		}),
	});
};

/**
 * The plan as plain data for other programs: lengths in millimetres, money in the currency of the
 * job, masses in kilograms. shared/plan.schema.json says the same. Throws `bug:` on a figure that
 * is not described here.
 */
export function recordOf(plan: Plan): object {
	const { currency } = plan.job.shop;
	const read = recordIn(currency).safeParse(sourceOf(plan));
	if (!read.success) throw new Error(`bug: the plan holds what its file does not: ${read.error}`);
	return read.data;
}

function sourceOf(plan: Plan): object {
	const { name, number, revision, shop, boxes } = plan.job;
	const countOf = (id: string): number => boxes.find((b) => b.id === id)?.count ?? 1;
	const { parts, blanks, carpets, runs, reels, needs, seamLength } = plan;
	const { quote, cautions, together } = plan;
	return {
		...{ format: 'kerf-and-nap plan', version: RECORD_VERSION },
		job: { name, number, revision, currency: shop.currency },
		problems: plan.problems.map(problemFile),
		boxes: plan.boxes.map((box) => boxFile(box, countOf(box.id))),
		panels: plan.panels.map(panelFile),
		...{ parts, blanks, carpets, runs, reels, needs, seamLength, quote, cautions, together },
		boards: plan.boards.map(boardsFile),
		cloths: plan.cloths.map(clothFile),
		options: plan.options.map((o) => ({ ...o, problems: o.problems.map(problemFile) })),
		order: { ...plan.order, lines: plan.order.lines.map(lineFile) },
		looked: plan.search,
	};
}

function problemFile({ path, what, fix, kind }: Problem): object {
	return { path: pathText(path), what, fix, kind };
}

function lineFile(line: Plan['order']['lines'][number]): object {
	return line.group === 'cloth' ? { ...line, pack: toMm(line.pack) } : line;
}

/** What a plan file holds, as JSON Schema (2020-12), for whoever checks a plan by machine. */
export function recordSchemaText(): string {
	const schema = z.toJSONSchema(recordIn(USUAL_CURRENCY), { io: 'output', reused: 'ref' });
	const titled = { title: `Kerf & Nap plan, version ${RECORD_VERSION}`, ...schema };
	return JSON.stringify(titled, null, '\t') + '\n';
}
