import { clothName, materialOf, LABEL_SHEETS, type LabelSheet, materialName } from '../../job';
import type { Part } from '../../design';
import { lastOf, printAngle } from '../../measure';
import type { Plan } from '../../plan';
import {
	type Mark,
	type TextMark,
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
 * A label for each piece, each blank of cloth and each offcut, on label sheets: mark, name, size,
 * board, edges, grain, and in a QR code and in words the job and the mark. First a test page to
 * hold against a label sheet before the labels themselves are printed on one.
 */
export function labelPages(plan: Plan, sheetId: string | undefined = plan.job.shop.labels): Page[] {
	const sheet = labelSheetOf(plan, sheetId);
	const figures = figuresOn(plan.job.shop.ruler);
	const all = [
		...partLabels(plan, figures),
		...blankLabels(plan, figures),
		...offcutsToLabel(plan, figures),
	];
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
	readonly name: string;
	/** What else is said, what matters most first. */
	readonly says: readonly string[];
	/** One thing of one job, in its QR code and in words under it. */
	readonly code: string;
	readonly qr: QrCode;
}

function partLabels(plan: Plan, figures: Figures): LabelText[] {
	const codes = codesOf(plan, plan.parts);
	return plan.parts.flatMap((part) => {
		const code = codes.get(part.id) ?? part.id;
		const qr = qrCode(code);
		return [...Array(part.count).keys()].map((copy) => ({
			mark: part.label,
			nth: part.count > 1 ? `${copy + 1} of ${part.count}` : '',
			name: part.name,
			says: labelSays(plan, part, figures),
			code,
			qr,
		}));
	});
}

/** A label for the back of each blank, which may bear the mark of the board it covers. */
function blankLabels(plan: Plan, figures: Figures): LabelText[] {
	const codes = codesOf(plan, plan.blanks);
	return plan.blanks.flatMap((blank) => {
		const code = `${codes.get(blank.id) ?? blank.id}-cloth`;
		const qr = qrCode(code);
		return [...Array(blank.count).keys()].map((copy) => ({
			mark: blank.label,
			nth: blank.count > 1 ? `${copy + 1} of ${blank.count}` : '',
			name: `Cloth: ${blank.name}`,
			says: [
				figures.size(blank.length, blank.width),
				clothName(plan.job, blank.cloth),
				`covers ${blank.covers}`,
				'on its back',
				jobText(plan),
			],
			code,
			qr,
		}));
	});
}

/** '0142-B1': job and mark; where two of them carry one mark, their ids. */
function codesOf(
	plan: Plan,
	things: readonly Pick<Part, 'id' | 'label'>[],
): ReadonlyMap<string, string> {
	const marks = things.map((p) => p.label);
	const once = new Set(marks.filter((m) => marks.indexOf(m) === marks.lastIndexOf(m)));
	return new Map(things.map(({ id, label }) => [id, codeIn(plan, once.has(label) ? label : id)]));
}

/** Of this job: by its number, or its name where it has none. */
function codeIn({ job }: Plan, mark: string): string {
	return [job.number === '' ? job.name : job.number, mark].filter((t) => t !== '').join('-');
}

/** The name of an offcut begins with the job's number, where it has one that is short enough. */
function offcutCode(plan: Plan, mark: string): string {
	const { number } = plan.job;
	return number !== '' && mark.startsWith(number.trim()) ? mark : codeIn(plan, mark);
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
					const material = materialOf(plan.job, boards.material);
					const says = [
						figures.size(offcut.length, offcut.width),
						materialText(plan, boards.material, material?.measured, figures),
						material?.grain === true ? grainText(offcut.length, figures) : '',
						`off sheet ${index + 1}`,
						jobText(plan),
					].filter((t) => t !== '');
					const code = offcutCode(plan, mark);
					return [{ mark, nth: '', name: 'Offcut: rack it', says, code, qr: qrCode(code) }];
				});
			}),
		);
}

const INSET = 2.5;
/** Height of the mark, and of the words under the code; mm. */
const MARK = 6;
const UNDER = 2.2;
const LEADING = 1.18;
/** Sizes tried for what is said, until all of it has room. */
const SIZES = [2.7, 2.5, 2.3, 2.1, 1.9, 1.7];

function labelMarks(label: LabelText, sheet: LabelSheet): Mark[] {
	const code = Math.min(sheet.height - 2 * 1.5 - 2 * UNDER, 20);
	const width = sheet.width - 2 * INSET - code - 1;
	const mark = shortened(label.mark, width - textWidth(label.nth, 2.8) - 2, MARK, 'semibold');
	const { size, lines, bold } = saidIn(label, width, sheet.height - INSET - MARK - 1.5);
	const left = sheet.width - INSET - code + 1.5;
	const top = (sheet.height - code) / 2 - UNDER;
	const words = wrapped(label.code, code, UNDER).slice(0, 2);
	const text = (x: number, y: number, text: string, size: number): TextMark => ({
		kind: 'text',
		x,
		y,
		text,
		size,
	});
	const marks: Mark[] = [
		{ ...text(INSET, INSET + 4.4, mark, MARK), weight: 'semibold' },
		...lines.map((line, i): Mark => ({
			...text(INSET, INSET + 5.4 + size * (1 + i * LEADING), line, size),
			...(i < bold ? { weight: 'semibold' } : {}),
		})),
		qrMark(label.qr, left, top, code),
		...words.map((line, i): Mark => ({
			...text(left + code / 2, top + code + UNDER * (0.6 + i), line, UNDER),
			anchor: 'middle',
		})),
		{ ...text(INSET + width, INSET + 4.4, label.nth, 2.8), anchor: 'end' },
	];
	return marks.filter((m) => m.kind === 'path' || m.text !== '');
}

/** Its name and all it says, as large as there is room for; the last line is cut where none is. */
function saidIn({ name, says }: LabelText, width: number, height: number) {
	const tried = SIZES.map((size) => {
		const named = wrapped(name, width, size, 'semibold');
		const lines = [...named.slice(0, 2), ...together(says, width, size)];
		return { size, lines, bold: Math.min(2, named.length) };
	});
	const most = (size: number): number => Math.max(1, Math.floor(height / (size * LEADING)));
	const found = tried.find((t) => t.lines.length <= most(t.size)) ?? lastOf(tried);
	const kept = found.lines.slice(0, most(found.size));
	if (kept.length === found.lines.length) return found;
	return {
		...found,
		lines: [...kept.slice(0, -1), shortened(`${lastOf(kept)} …`, width, found.size)],
	};
}

/** Short remarks side by side; one that is too long for a line goes on over the next. */
function together(says: readonly string[], width: number, size: number): string[] {
	const lines: string[] = [];
	for (const say of says) {
		const joined = lines.length === 0 ? say : `${lastOf(lines)} · ${say}`;
		if (lines.length > 0 && textWidth(joined, size) <= width) lines[lines.length - 1] = joined;
		else lines.push(...wrapped(say, width, size));
	}
	return lines;
}

function labelSays(plan: Plan, part: Part, figures: Figures): string[] {
	const size = figures.size(part.length, part.width);
	const what = part.shift ? 'blank ' : part.short ? 'LONG face ' : '';
	return [
		`${what}${size}`,
		...partFacesText(part, figures).split(', '),
		bevelsText(part, plan.job.shop.ruler.decimal),
		materialText(plan, part.material, part.thickness, figures),
		part.grain === 'length' ? grainText(part.length, figures) : '',
		part.show ? `● show face: ${part.face}` : '',
		handOf(plan, part),
		ownerName(plan, part.owner),
		jobText(plan),
	].filter((t) => t !== '');
}

function materialText(
	plan: Plan,
	id: string,
	thickness: number | undefined,
	figures: Figures,
): string {
	const name = materialName(plan.job, id);
	return thickness === undefined ? name : `${name}, ${figures.length(thickness)}`;
}

const grainText = (along: number, figures: Figures): string =>
	`grain along ${figures.bench(along)}`;

/** Of a panel that is one of a pair. */
function handOf({ panels }: Plan, { owner, id }: Part): string {
	const detail = panels.find((p) => p.id === owner)?.detail;
	if (!detail || detail.hand === null) return '';
	const right = detail.both ? id.endsWith('-R') : detail.hand === 'R';
	return right ? 'RIGHT (R)' : 'LEFT (L)';
}

const jobText = ({ job }: Plan): string => [job.number, job.name].filter((t) => t !== '').join(' ');

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
