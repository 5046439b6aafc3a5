import type { OrderLine, SupplierOrder } from '../../estimate';
import type { Plan } from '../../plan';
import {
	type Block,
	heading,
	type Leaf,
	leavesOf,
	paragraph,
	type Row,
	space,
	table,
	widthOf,
} from '../page';
import { buyText } from '../wording';
import { linesFrom } from './order-pages';

/**
 * What to buy, a page for each supplier, to lay on the counter or to read out: codes and how many,
 * no prices and nothing of the job but its number.
 */
export function counterPages(plan: Plan): Leaf[] {
	return plan.order.suppliers.flatMap((from) => {
		const title = `To buy: ${from.name || 'anywhere'}`;
		return leavesOf(plan, { name: title, title }, counterBlocks(plan, from));
	});
}

function counterBlocks(plan: Plan, from: SupplierOrder): Block[] {
	const width = widthOf(plan);
	const { job } = plan;
	const supplier = job.stock.suppliers.find((s) => s.id === from.id);
	const ours = [job.shop.name, job.shop.address.trim()].filter((t) => t !== '').join('\n');
	const lines = linesFrom(plan, from);
	return [
		{ height: 0, marks: [], fresh: true },
		heading(from.name || 'To buy anywhere', width, numberText(plan)),
		...(supplier?.contact ? [paragraph(supplier.contact, width, { ink: 'pencil' })] : []),
		...(ours === '' ? [] : [paragraph(`For ${ours}`, width)]),
		space(3),
		...counterTable(plan, lines, width),
	];
}

function counterTable(plan: Plan, lines: readonly OrderLine[], width: number): Block[] {
	const { ruler } = plan.job.shop;
	const rows = lines.map((l): Row => ({
		cells: [
			{ tick: true },
			{ text: l.code === '' ? '–' : l.code, weight: 'semibold' },
			l.what,
			{ text: buyText(l, ruler), weight: 'semibold' },
		],
	}));
	const columns = [
		{ head: '', width: 4.4 },
		{ head: 'Code', width: { share: 3 } },
		{ head: 'What', width: { share: 6 } },
		{ head: 'How many', width: { share: 4 } },
	];
	return table({ columns, rows, size: 3.8 }, width);
}

const numberText = ({ job }: Plan): string =>
	[job.number === '' ? '' : `our number ${job.number}`, job.date]
		.filter((t) => t !== '')
		.join('  ·  ');
