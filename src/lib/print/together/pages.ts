import type { Plan } from '../../plan';
import {
	type Block,
	type Column,
	heading,
	type Leaf,
	leavesOf,
	paragraph,
	space,
	subheading,
	table,
	widthOf,
} from '../page';
import {
	APART_MEANS,
	HOW_SHARED,
	JOB_HEADS,
	jobRows,
	SAVING_HEADS,
	savingRows,
	savingText,
	SHARE_HEADS,
	shareRows,
	WAY_HEADS,
	wayRows,
} from './rows';

type Rows = readonly (readonly string[])[];

/** For the bench: whose marks these are, and what is cut at once; nothing for one job. */
export function jobsBlocks(plan: Plan, width: number): Block[] {
	if (!plan.together) return [];
	const jobs = columns(JOB_HEADS, [13, 5, 4, 13, 13], 3);
	return [
		heading('Jobs', width, 'each mark begins with its job'),
		...table({ columns: jobs, rows: rowsOf(jobRows(plan)) }, width),
		space(3),
		...wayBlocks(plan, width),
		space(5),
	];
}

function wayBlocks(plan: Plan, width: number): Block[] {
	const ways = columns(WAY_HEADS, [4, 3, 4, 20, 20], 3);
	return table({ columns: ways, rows: rowsOf(wayRows(plan)) }, width);
}

/** For the shop: what it saves, and what each job has to bear. */
export function sharePages(plan: Plan): Leaf[] {
	if (!plan.together) return [];
	const width = widthOf(plan);
	const { currency } = plan.job.shop;
	const saving = columns(SAVING_HEADS, [4, 28, 28, 28], 1);
	const shares = columns(SHARE_HEADS, [13, 4, 15, 15, 19, 19, 19, 19], 2);
	const shared = rowsOf(shareRows(plan)).map((row, i, all) =>
		i === all.length - 1 ? { ...row, sum: true } : row,
	);
	return leavesOf(plan, { name: 'Jobs together', title: 'Jobs together: shop only' }, [
		heading('Jobs together', width, `shop only  ·  amounts in ${currency}`),
		paragraph(savingText(plan), width, { weight: 'semibold' }),
		paragraph(APART_MEANS, width),
		space(2),
		...table({ columns: saving, rows: rowsOf(savingRows(plan)) }, width),
		space(5),
		subheading('What each job has to bear', width),
		...table({ columns: shares, rows: shared }, width),
		paragraph(HOW_SHARED, width),
		space(5),
		subheading('How they are laid out', width),
		...wayBlocks(plan, width),
	]);
}

const rowsOf = (rows: Rows) => rows.map((cells) => ({ cells }));

/** Widths under 10 are shares of what is left; figures stand to the right. */
function columns(
	heads: readonly string[],
	widths: readonly number[],
	figuresFrom: number,
): Column[] {
	return heads.map((head, i): Column => {
		const width = widths[i] ?? 1;
		return {
			head,
			width: width < 10 ? { share: width } : width,
			...(i >= figuresFrom ? { align: 'end' as const } : {}),
		};
	});
}
