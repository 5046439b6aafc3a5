import { alikeSheets, DrawnSheets } from '../layout';
import { nth } from '../measure';
import type { Plan } from '../plan';
import {
	cuttingListCsv,
	labelPages,
	offcutsCsv,
	orderCsv,
	partsCsv,
	runsCsv,
	supplierCsvs,
} from './lists';
import type { Page, Fonts } from './drawing';
import {
	costPack,
	counterPack,
	handoverPack,
	printPack,
	quotePack,
	shopCardPack,
	templatePages,
} from './pack';
import { writePdf, drawingSvg } from './pens';
import { rollDrawing } from './cloth';
import { machineFiles, zipped } from './machine';
import { sheetDrawing } from './sheet';

/** One file that a plan gives. */
interface OutputFile {
	readonly name: string;
	readonly type: string;
	readonly data: string | Uint8Array;
	/** Pages of it that could not be drawn, and why; a page that says so stands in their place. */
	readonly undrawn?: readonly string[];
}

const PDFS = {
	'print-pack': { pages: (plan: Plan): Page[] => printPack(plan), title: '' },
	labels: { pages: (plan: Plan): Page[] => labelPages(plan), title: ': labels' },
	templates: { pages: (plan: Plan): Page[] => templatePages(plan), title: ': templates' },
	quote: { pages: (plan: Plan): Page[] => quotePack(plan), title: ': quote' },
	'cost-sheet': { pages: (plan: Plan): Page[] => costPack(plan), title: ': cost sheet' },
	'counter-lists': { pages: (plan: Plan): Page[] => counterPack(plan), title: ': to buy' },
	handover: { pages: (plan: Plan): Page[] => handoverPack(plan), title: ': handover' },
	'shop-card': { pages: (plan: Plan): Page[] => shopCardPack(plan), title: ': shop card' },
} as const;

/** Kinds that need the printed faces. */
export type PdfKind = keyof typeof PDFS;

const LISTS = {
	order: orderCsv,
	'cutting-list': cuttingListCsv,
	parts: partsCsv,
	offcuts: offcutsCsv,
	runs: runsCsv,
} as const;

export type OutputKind = PdfKind | keyof typeof LISTS | 'supplier-orders' | 'layouts' | 'machine';

export const isPdf = (kind: OutputKind): kind is PdfKind => kind in PDFS;

/** The pages of a paper, each drawn when it is asked for its marks. */
export const pagesOf = (kind: PdfKind, plan: Plan): Page[] => PDFS[kind].pages(plan);

/** One PDF; none when it would have no pages. */
export function pdfFiles(kind: PdfKind, plan: Plan, fonts: Fonts): OutputFile[] {
	const { job } = plan;
	const pages = pagesOf(kind, plan);
	if (pages.length === 0) return [];
	const meta = {
		title: job.name + PDFS[kind].title,
		author: job.shop.name,
		date: job.date,
		subject: subjectOf(plan),
	};
	const undrawn = pages.flatMap((p) => (p.fault === undefined ? [] : [`${p.title}: ${p.fault}`]));
	const data = writePdf(pages, fonts, meta);
	return [{ name: `${kind}.pdf`, type: 'application/pdf', data, undrawn }];
}

function subjectOf({ job }: Plan): string {
	const revision = job.revision === '' ? '' : `revision ${job.revision}`;
	return [job.number, revision, job.vehicle].filter((t) => t !== '').join(', ');
}

/** Lists as CSV, every sheet and roll as SVG, or all that machines cut by. */
export function plainFiles(kind: Exclude<OutputKind, PdfKind>, plan: Plan): OutputFile[] {
	if (kind === 'layouts') return [...sheetFiles(plan), ...rollFiles(plan)];
	if (kind === 'machine') return machineFiles(plan);
	if (kind === 'supplier-orders') return mailFiles(plan);
	if (kind === 'runs' && plan.runs.length === 0) return [];
	return [{ name: `${kind}.csv`, type: 'text/csv', data: LISTS[kind](plan) }];
}

/** A file for each supplier; none where only one list would be made, of what anybody sells. */
function mailFiles(plan: Plan): OutputFile[] {
	if (plan.order.suppliers.every((s) => s.id === '')) return [];
	return supplierCsvs(plan).map(({ id, text }) => ({
		...{ name: `order-${id}.csv`, type: 'text/csv', data: text },
	}));
}

/** The files for machines as one file; none where there are none. */
export function machineZip(plan: Plan): OutputFile[] {
	const files = machineFiles(plan);
	if (files.length === 0) return [];
	return [{ name: 'machine.zip', type: 'application/zip', data: zipped(files) }];
}

const SVG = 'image/svg+xml';

/** Room of a layout that stands alone, mm: a sheet of paper a size larger than the pack's. */
const ROOM = { width: 400, height: 260 };

/**
 * The sheets that have a page, each as a file; several alike are one, whose name ends with how many
 * they are. A layout that failed its audit is not drawn.
 */
function sheetFiles(plan: Plan): OutputFile[] {
	const drawn = new DrawnSheets(plan.boards);
	return plan.boards
		.filter((boards) => boards.faults.length === 0)
		.flatMap((boards) =>
			alikeSheets(boards).flatMap((alike) => {
				const first = nth(alike, 0);
				if (!drawn.has(nth(boards.answer.layouts, first))) return [];
				const times = alike.length === 1 ? '' : `-x${alike.length}`;
				const drawing = sheetDrawing(plan, boards, first, ROOM);
				return {
					name: `sheet-${boards.material}-${first + 1}${times}.svg`,
					type: SVG,
					data: drawingSvg(drawing, { colours: 'inline' }),
				};
			}),
		);
}

function rollFiles(plan: Plan): OutputFile[] {
	return plan.cloths
		.flatMap((cloth) => cloth.rolls)
		.filter((roll) => roll.faults.length === 0)
		.map((roll, i, all) => ({
			name: `roll-${roll.roll}${pullOff(all, i)}.svg`,
			type: SVG,
			data: drawingSvg(rollDrawing(roll, plan, ROOM), { colours: 'inline' }),
		}));
}

/** Jobs planned together may each pull off one roll: '-2' for the second pull. */
function pullOff(rolls: readonly { readonly roll: string }[], i: number): string {
	const before = rolls.slice(0, i).filter((r) => r.roll === rolls[i]?.roll).length;
	return before === 0 ? '' : `-${before + 1}`;
}
