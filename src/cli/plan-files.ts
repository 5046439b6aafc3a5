import type { Plan } from '../lib/plan';
import type { Page } from '../lib/print/drawing';
import { labelPages } from '../lib/print/label-pages';
import { printPack, templatePages } from '../lib/print/pack';
import { writePdf } from '../lib/print/pdf';
import { rollDrawing } from '../lib/print/roll-drawing';
import { sheetDrawing } from '../lib/print/sheet-drawing';
import { drawingSvg } from '../lib/print/svg';
import { cuttingListCsv, orderCsv } from '../lib/print/csv-files';
import { loadFonts } from './fonts';
import { planJson } from './plan-json';
import { LAYOUTS, type OutFile } from './write-files';

/** Everything the `plan` command leaves on disk. */
export function planFiles(plan: Plan): OutFile[] {
	const fonts = loadFonts();
	const { job } = plan;
	const meta = { author: job.shop.name, date: job.date };
	const pdf = (name: string, title: string, pages: Page[]): OutFile[] =>
		pages.length === 0 ? [] : [{ name, data: writePdf(pages, fonts, { ...meta, title }) }];
	return [
		...pdf('print-pack.pdf', job.name, printPack(plan)),
		{ name: 'order.csv', data: orderCsv(plan) },
		{ name: 'cutting-list.csv', data: cuttingListCsv(plan) },
		...pdf('labels.pdf', `${job.name}: labels`, labelPages(plan)),
		...pdf('templates.pdf', `${job.name}: templates`, templatePages(plan)),
		{ name: 'plan.json', data: JSON.stringify(planJson(plan), null, '\t') + '\n' },
		...sheetSvgs(plan),
		...rollSvgs(plan),
	];
}

/** Room of a layout that stands alone, mm: a sheet of paper a size larger than the pack's. */
const ROOM = { width: 400, height: 260 };

/** A layout that failed its audit is not drawn. */
function sheetSvgs(plan: Plan): OutFile[] {
	return plan.boards
		.filter((boards) => boards.faults.length === 0)
		.flatMap((boards) =>
			boards.answer.layouts.map((_, i) => ({
				name: `${LAYOUTS}/sheet-${boards.material}-${i + 1}.svg`,
				data: drawingSvg(sheetDrawing(plan, boards, i, ROOM), { colours: 'inline' }),
			})),
		);
}

function rollSvgs(plan: Plan): OutFile[] {
	return plan.cloths
		.flatMap((cloth) => cloth.rolls)
		.filter((roll) => roll.faults.length === 0)
		.map((roll) => ({
			name: `${LAYOUTS}/roll-${roll.roll}.svg`,
			data: drawingSvg(rollDrawing(roll, plan, ROOM), { colours: 'inline' }),
		}));
}
