import { LABEL_SHEETS, type LabelSheet, letterPaper } from '../../../job';
import type { Plan } from '../../../plan';
import { line, type Mark, type Page, placed, rect } from '../../drawing';
import { figuresOn } from '../../wording';
import { PAPER_SIZES } from '../../page';
import { scaleBar } from '../../marks';
import { labelMarks } from './label-marks';
import { type LabelText, labelTexts } from './label-text';

/** The kind asked for, else the first that is made in the job's paper. */
function labelSheetOf(plan: Plan, id: string | undefined): LabelSheet {
	const own = LABEL_SHEETS.filter((s) => s.paper === letterPaper(plan.job.shop.paper));
	const sheet = LABEL_SHEETS.find((s) => s.id === id) ?? own[0];
	if (sheet === undefined) throw new Error('bug: no label sheet for this paper');
	return sheet;
}

/** Past these it is no work for one printer; what is left out is said on the test page. */
const MOST_LABELS = 3000;

/**
 * A label for each piece and each blank of cloth, or for a pile of many alike, for each offcut and
 * either end of each run, on label sheets: mark, name, size, board, edges, grain, and in a QR code
 * and in words the job and the mark. First a test page to hold against a label sheet before labels
 * are printed on one.
 */
export function labelPages(plan: Plan, sheetId: string | undefined = plan.job.shop.labels): Page[] {
	const sheet = labelSheetOf(plan, sheetId);
	const figures = figuresOn(plan.job.shop.ruler);
	const all = labelTexts(plan, figures);
	if (all.length === 0) return [];
	const labels = all.slice(0, MOST_LABELS);
	const left = all.length - labels.length;
	const each = sheet.columns * sheet.rows;
	const pages: Page[] = [testPage(plan, sheet, notesOf(plan, left))];
	for (let from = 0; from < labels.length; from += each) {
		const n = pages.length;
		const name = `Labels ${n} of ${Math.ceil(labels.length / each)}`;
		const title = `${plan.job.name}: ${name}`;
		pages.push(labelPage({ name, title }, labels.slice(from, from + each), sheet));
	}
	return pages;
}

/** A page whose labels are drawn when it is written: thousands of their codes fill the memory. */
function labelPage(
	named: Pick<Page, 'name' | 'title'>,
	labels: readonly LabelText[],
	sheet: LabelSheet,
): Page {
	return {
		...PAPER_SIZES[sheet.paper],
		...named,
		get marks() {
			return labels.flatMap((label, i) => placed(labelMarks(label, sheet), cornerOf(sheet, i)));
		},
	};
}

function cornerOf(sheet: LabelSheet, i: number): { x: number; y: number } {
	return {
		x: sheet.left + (i % sheet.columns) * sheet.pitchX,
		y: sheet.top + Math.floor(i / sheet.columns) * sheet.pitchY,
	};
}

/** What is not as one would expect: labels of piles, labels left out. */
function notesOf({ job, parts, blanks }: Plan, left: number): string[] {
	const each = job.shop.labelEach;
	const isPiled = [...parts, ...blanks].some(({ count }) => count > each);
	return [
		...(isPiled ? [`Of more than ${each} alike, one label is for their pile.`] : []),
		...(left === 0
			? []
			: [
					`Only the first ${MOST_LABELS} labels are here: ${left} ${left === 1 ? 'is' : 'are'} left out.`,
				]),
	];
}

/** Outlines of all labels and the measuring bar, for plain paper held against a label sheet. */
function testPage(plan: Plan, sheet: LabelSheet, notes: readonly string[]): Page {
	const size = PAPER_SIZES[sheet.paper];
	const outlines = [...Array(sheet.columns * sheet.rows).keys()].map((i): Mark => {
		const { x, y } = cornerOf(sheet, i);
		return { kind: 'path', steps: rect(x, y, sheet.width, sheet.height), line: 'narrow' };
	});
	const x = sheet.left + 4;
	const y = sheet.top + 4;
	const say = (text: string, down: number, semibold = false): Mark => ({
		kind: 'text',
		x,
		y: y + down,
		text,
		size: 3.2,
		halo: true,
		...(semibold ? { weight: 'semibold' } : {}),
	});
	const bar = { x: size.width / 2 - 51, y: sheet.top + sheet.height * 1.5 };
	return {
		...size,
		name: 'Labels, test page',
		title: `${plan.job.name}: labels, test page`,
		marks: [
			...outlines,
			{ kind: 'path', steps: rect(bar.x - 3, bar.y - 3, 108, 15), fill: 'sheet' },
			...placed(scaleBar().marks, bar),
			{ kind: 'path', steps: line(sheet.left, sheet.top, sheet.left + 3, sheet.top), line: 'wide' },
			say('Test page for plain paper', 3, true),
			say('Print at 100 %, measure the bar,', 8),
			say('then hold it against a label sheet.', 12),
			...notes.map((text, i) => say(text, 17 + 4 * i, true)),
		],
	};
}
