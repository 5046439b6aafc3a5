import { materialOf, LABEL_SHEETS, type LabelSheet, materialName } from '../../job';
import type { Part } from '../../design';
import { printAngle } from '../../measure';
import type { Plan } from '../../plan';
import {
	type Mark,
	type Page,
	line,
	rect,
	placed,
	qrCode,
	type QrCode,
	qrMark,
	shortened,
	textWidth,
	wrapped,
} from '../drawing';
import { figuresOn, type Figures, partFacesText, rackLabels } from '../wording';
import { PAPER_SIZES } from '../page';
import { ownerName } from './parts-pages';
import { scaleBar } from '../marks';

/** The kind asked for, else the first that is made in the job's paper. */
function labelSheetOf(plan: Plan, id: string | undefined): LabelSheet {
	const own = LABEL_SHEETS.filter((s) => s.paper === plan.job.shop.paper);
	const sheet = LABEL_SHEETS.find((s) => s.id === id) ?? own[0];
	if (sheet === undefined) throw new Error('bug: no label sheet for this paper');
	return sheet;
}

/** Past these it is no work for one printer; what is left out is said on the test page. */
const MOST_LABELS = 3000;

/**
 * A label for each piece and each offcut, on label sheets: mark, name, size, edges, and a QR code
 * of the part's id or the offcut's mark on the rack. First a test page to hold against a label
 * sheet before the labels themselves are printed on one.
 */
export function labelPages(plan: Plan, sheetId: string | undefined = plan.job.shop.labels): Page[] {
	const sheet = labelSheetOf(plan, sheetId);
	const figures = figuresOn(plan.job.shop.ruler);
	const all = [...partLabels(plan, figures), ...offcutsToLabel(plan, figures)];
	if (all.length === 0) return [];
	const labels = all.slice(0, MOST_LABELS);
	const left = all.length - labels.length;
	const each = sheet.columns * sheet.rows;
	const pages: Page[] = [testPage(plan, sheet, left)];
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

/** What stands on one label. */
interface LabelText {
	readonly mark: string;
	/** '1 of 2', for one of several alike. */
	readonly nth: string;
	/** The first in bold. */
	readonly lines: readonly string[];
	/** What its QR code says. */
	readonly code: QrCode;
}

function partLabels(plan: Plan, figures: Figures): LabelText[] {
	return plan.parts.flatMap((part) => {
		const code = qrCode(part.id);
		return [...Array(part.count).keys()].map((copy) => ({
			mark: part.label,
			nth: part.count > 1 ? `${copy + 1} of ${part.count}` : '',
			lines: labelLines(plan, part, figures),
			code,
		}));
	});
}

/**
 * Labels for what goes back to the rack; the offcuts of a sheet that is cut already carry theirs.
 */
function offcutsToLabel(plan: Plan, figures: Figures): LabelText[] {
	return plan.boards
		.filter((boards) => boards.faults.length === 0)
		.flatMap((boards) =>
			boards.answer.layouts.flatMap((layout, index) => {
				if (boards.sources[index]?.cut === true) return [];
				const labels = rackLabels({ plan, boards, index });
				return layout.offcuts.flatMap((offcut, i): LabelText[] => {
					const mark = labels[i];
					if (mark === undefined) return [];
					const lines = [
						'Offcut: rack it',
						figures.size(offcut.length, offcut.width),
						materialName(plan.job, boards.material),
						[plan.job.number, `off sheet ${index + 1}`].filter((t) => t !== '').join('  '),
					];
					return [{ mark, nth: '', lines, code: qrCode(mark) }];
				});
			}),
		);
}

function labelMarks(label: LabelText, sheet: LabelSheet): Mark[] {
	const inset = 2.5;
	const code = Math.min(sheet.height - 2 * 1.5, 22);
	const width = sheet.width - 2 * inset - code - 1;
	const { nth } = label;
	// No bevel may be cut off its list: that one goes on over more lines.
	const lines = label.lines.flatMap((text) =>
		text.startsWith(BEVELS) ? wrapped(text, width, 2.9) : [text],
	);
	const mark = shortened(label.mark, width - textWidth(nth, 2.8) - 2, 7, 'semibold');
	const room = Math.floor((sheet.height - 2 * inset - 6.4) / 3.5);
	const marks: Mark[] = [
		{ kind: 'text', x: inset, y: inset + 5, text: mark, size: 7, weight: 'semibold' },
		...lines.slice(0, room).map((text, i): Mark => ({
			kind: 'text',
			x: inset,
			y: inset + 9.4 + i * 3.5,
			text: shortened(text, width, 2.9),
			size: 2.9,
			...(i === 0 ? { weight: 'semibold' } : {}),
		})),
		qrMark(label.code, sheet.width - inset - code + 1.5, (sheet.height - code) / 2, code),
	];
	if (nth !== '')
		marks.push({
			kind: 'text',
			x: inset + width,
			y: inset + 5,
			text: nth,
			size: 2.8,
			anchor: 'end',
		});
	return marks.filter((m) => m.kind === 'path' || m.text !== '');
}

function labelLines(plan: Plan, part: Part, figures: Figures): string[] {
	const material = materialOf(plan.job, part.material)?.name;
	return [
		part.name,
		`${part.shift === undefined ? '' : 'blank '}${figures.size(part.length, part.width)}`,
		// A line for the offset of its own: a label is too narrow for both.
		...partFacesText(part, figures).split(', '),
		bevelsText(part, plan.job.shop.ruler.decimal),
		part.show ? `● show face: ${part.face}` : '',
		material ?? part.material,
		[plan.job.number, ownerName(plan, part.owner)].filter((t) => t !== '').join('  '),
	].filter((t) => t !== '');
}

const BEVELS = 'bevels ';

/**
 * All bevels in as few words as a label holds: those of one tilt together, each edge by its letter
 * or, where none meets it, by its side.
 */
export function bevelsText(part: Pick<Part, 'bevels'>, decimal: '.' | ','): string {
	const edges = new Map<string, string[]>();
	for (const { edge, side, tilt } of part.bevels) {
		const by = printAngle(tilt, decimal);
		edges.set(by, [...(edges.get(by) ?? []), edge === '' ? side : edge]);
	}
	const all = [...edges].map(([by, at]) => `${at.join(' ')} ${by}`);
	return all.length === 0 ? '' : `${BEVELS}${all.join(', ')}`;
}

/** Outlines of all labels and the measuring bar, for plain paper held against a label sheet. */
function testPage(plan: Plan, sheet: LabelSheet, left: number): Page {
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
			...(left === 0
				? []
				: [
						say(
							`Only the first ${MOST_LABELS} labels are here: ${left} ${left === 1 ? 'is' : 'are'} left out.`,
							17,
							true,
						),
					]),
		],
	};
}
