import { jsPDF } from 'jspdf';
import {
	type Ink,
	type Mark,
	type Page,
	type PathMark,
	type PathStep,
	type TextMark,
	faceRuns,
	type Face,
	type Fonts,
	type Weight,
	startOf,
	textWidth,
} from '../drawing';
import { addBookmarks, type PdfObjects } from './bookmarks';
import { hexText, wide } from './pdf-text';
import { HALO, PAPER, STROKES } from './pens';

/**
 * What the file says of itself. Nothing in it depends on the clock: the same pages give the same
 * bytes.
 */
interface PdfMeta {
	readonly title: string;
	/** What it is about: the job's number, revision and vehicle. */
	readonly subject?: string;
	readonly author: string;
	/** The job's date; an ISO date becomes the file's date, anything else a fixed day. */
	readonly date: string;
}

/** Decimals of a coordinate in the file, points. */
const PRECISION = 4;
const POINTS_PER_MM = 72 / 25.4; // ISO 32000-1 8.3.2.3: the user unit is 1/72 in

interface Packing {
	processDataByFilters(data: string, filters: unknown): { readonly data: string };
}

/**
 * The library adds up what it packs letter by letter, and such a text takes thirty times its length
 * until one of its letters is asked for.
 */
function packLean(api: Packing): void {
	const pack = api.processDataByFilters.bind(api);
	api.processDataByFilters = (data, filters) => {
		const packed = pack(data, filters);
		packed.data.charCodeAt(0);
		return packed;
	};
}

packLean(jsPDF.API as unknown as Packing);

/** All pages as one PDF, each the size of its paper, its scale exact, its faces embedded. */
export function writePdf(pages: readonly Page[], fonts: Fonts, meta: PdfMeta): Uint8Array {
	const first = pages[0];
	if (first === undefined) throw new Error('bug: a print pack without pages');
	const doc = new jsPDF({
		unit: 'mm',
		format: [first.width, first.height],
		orientation: turned(first),
		compress: true,
		putOnlyUsedFonts: true,
		precision: PRECISION,
	});
	const faces = new Set<Face>();
	pages.forEach((page, i) => {
		if (i > 0) doc.addPage([page.width, page.height], turned(page));
		// Asked for once: a page may be made only now, and let go after it is written.
		const { marks } = page;
		addFaces(doc, marks, fonts, faces);
		for (const mark of marks) drawMark(doc, mark, page.height);
		asOneText(doc, i + 1);
	});
	describe(doc, pages, meta);
	return new Uint8Array(doc.output('arraybuffer'));
}

/** A written page as one text: its hundred thousand small ones take ten times the memory. */
function asOneText(doc: jsPDF, n: number): void {
	const texts = linesOf(doc)[n];
	// Joined as the library joins them, so the file has the same bytes.
	texts?.splice(0, texts.length, texts.join('\n'));
}

function turned(page: Page): 'portrait' | 'landscape' {
	return page.width > page.height ? 'landscape' : 'portrait';
}

/**
 * Only the faces that some letter needs: reading the fallback costs more than a page of drawing.
 */
function addFaces(doc: jsPDF, marks: readonly Mark[], fonts: Fonts, known: Set<Face>): void {
	for (const mark of marks)
		if (mark.kind === 'text')
			for (const { face } of faceRuns(mark.text, mark.weight ?? 'regular')) {
				if (known.has(face)) continue;
				known.add(face);
				doc.addFileToVFS(`${face}.ttf`, binary(fonts[face]));
				doc.addFont(`${face}.ttf`, face, 'normal');
			}
}

function binary(bytes: Uint8Array): string {
	let text = '';
	for (let i = 0; i < bytes.length; i += 8192)
		text += String.fromCharCode(...bytes.subarray(i, i + 8192));
	return text;
}

function describe(doc: jsPDF, pages: readonly Page[], meta: PdfMeta): void {
	const day = /^(20[0-2]\d|203[0-7])-(0\d|1[0-2])-([0-2]\d|3[01])/.exec(meta.date);
	const [year, month, date] = day?.slice(1) ?? ['2000', '01', '01'];
	doc.setCreationDate(`D:${year}${month}${date}000000+00'00'`);
	const named = pages.map(({ name, chapter = '' }) => `${chapter}: ${name}`);
	doc.setFileId(fileId([meta.title, meta.date, ...named, ...written(doc)]));
	doc.setDocumentProperties({
		title: wide(meta.title),
		author: wide(meta.author),
		creator: 'Kerf & Nap',
		...(meta.subject ? { subject: wide(meta.subject) } : {}),
	});
	// The words of the pages; names in them may be of any language.
	doc.setLanguage('en');
	addBookmarks(doc.internal as unknown as PdfObjects, pages);
	// No scaling in the print dialogue: a full-size template must come out full size.
	doc.viewerPreferences({ PrintScaling: 'None', PickTrayByPDFSize: true, DisplayDocTitle: true });
	doc.internal.events.subscribe('putCatalog', () => {
		const labels = pages.map((page, i) => `${i} << /P ${hexText(page.name)} >>`);
		rawWriter(doc).write(`/PageLabels << /Nums [${labels.join(' ')}] >>`);
	});
}

/** The library has this function but not in its types. */
function rawWriter(doc: jsPDF): { write(text: string): void } {
	return doc.internal as unknown as { write(text: string): void };
}

/** All that stands on the pages, as the file holds it. */
function written(doc: jsPDF): string[] {
	return linesOf(doc).flat();
}

/** What is written on each page, counted from 1. */
function linesOf(doc: jsPDF): string[][] {
	return doc.internal.pages as unknown as string[][];
}

/**
 * 32 hex digits of four FNV-1a sums: enough to tell two files apart, and the same for the same
 * pages. Each sum takes every fourth letter of a text.
 */
function fileId(texts: readonly string[]): string {
	let [a, b, c, d] = [0x811c9dc5, 0x01000193, 0x9e3779b9, 0x7f4a7c15];
	for (const text of texts)
		for (let i = 0; i < text.length; i += 4) {
			a = Math.imul(a ^ text.charCodeAt(i), PRIME);
			b = Math.imul(b ^ text.charCodeAt(i + 1), PRIME);
			c = Math.imul(c ^ text.charCodeAt(i + 2), PRIME);
			d = Math.imul(d ^ text.charCodeAt(i + 3), PRIME);
		}
	return [a, b, c, d]
		.map((s) => (s >>> 0).toString(16).padStart(8, '0'))
		.join('')
		.toUpperCase();
}

const PRIME = 0x01000193;

function drawMark(doc: jsPDF, mark: Mark, height: number): void {
	if (mark.kind === 'path') drawPath(doc, mark, height);
	else if (mark.kind === 'text') drawText(doc, mark);
	else {
		const { x, y, width, height, jpeg, hash } = mark;
		// As it is: no other packing makes a JPEG smaller, and its bytes stay the same.
		doc.addImage(`data:image/jpeg;base64,${jpeg}`, 'JPEG', x, y, width, height, hash, 'NONE');
	}
}

function drawPath(doc: jsPDF, mark: PathMark, height: number): void {
	if (mark.fill === undefined && mark.line === undefined) return;
	const only = mark.line === undefined ? rectangles(mark.steps, height) : null;
	rawWriter(doc).write(only ?? pathOperators(mark.steps, height));
	if (mark.fill !== undefined) doc.setFillColor(PAPER[mark.fill]);
	if (mark.line !== undefined) setStroke(doc, mark.ink ?? 'ink', STROKES[mark.line]);
	finishPath(doc, mark);
}

/**
 * Path construction operators (ISO 32000-1 8.5.2), written at once: a call of the library for each
 * step takes far longer.
 */
function pathOperators(steps: readonly PathStep[], height: number): string {
	const spot = (x: number, y: number): string => `${points(x)} ${points(height - y)}`;
	return steps
		.map((step) => {
			if (step[0] === 'M') return `${spot(step[1], step[2])} m`;
			if (step[0] === 'L') return `${spot(step[1], step[2])} l`;
			if (step[0] === 'Z') return 'h';
			const [, ax, ay, bx, by, x, y] = step;
			return `${spot(ax, ay)} ${spot(bx, by)} ${spot(x, y)} c`;
		})
		.join('\n');
}

/**
 * The same for a path of upright rectangles, such as a QR code: a fifth of the writing. Null for
 * any other path.
 */
function rectangles(steps: readonly PathStep[], height: number): string | null {
	const found: string[] = [];
	for (let i = 0; i < steps.length; i += 5) {
		const [a, b, c, d] = [steps[i], steps[i + 1], steps[i + 2], steps[i + 3]];
		if (a?.[0] !== 'M' || b?.[0] !== 'L' || c?.[0] !== 'L' || d?.[0] !== 'L') return null;
		if (steps[i + 4]?.[0] !== 'Z') return null;
		if (a[2] !== b[2] || b[1] !== c[1] || c[2] !== d[2] || d[1] !== a[1]) return null;
		const size = `${points(b[1] - a[1])} ${points(b[2] - c[2])}`;
		found.push(`${points(a[1])} ${points(height - a[2])} ${size} re`);
	}
	return found.join('\n');
}

/** Millimetres in the page's own unit, to a ten-thousandth of it. */
function points(mm: number): number {
	return Math.round(mm * POINTS_PER_MM * 1e4) / 1e4;
}

function finishPath(doc: jsPDF, mark: PathMark): void {
	if (mark.fill === undefined) doc.stroke();
	else if (mark.line === undefined) {
		if (mark.evenOdd === true) doc.fillEvenOdd();
		else doc.fill();
	} else if (mark.evenOdd === true) doc.fillStrokeEvenOdd();
	else doc.fillStroke();
}

function setStroke(doc: jsPDF, ink: Ink, stroke: { width: number; dash: readonly number[] }): void {
	doc.setDrawColor(PAPER[ink]);
	doc.setLineWidth(stroke.width);
	doc.setLineDashPattern([...stroke.dash], 0);
	doc.setLineJoin('round');
}

function drawText(doc: jsPDF, mark: TextMark): void {
	if (mark.halo === true) {
		setStroke(doc, 'sheet', { width: mark.size * HALO, dash: [] });
		setRuns(doc, mark, 'stroke');
	}
	doc.setTextColor(PAPER[mark.ink ?? 'ink']);
	setRuns(doc, mark, 'fill');
}

/**
 * The fallback face comes in one weight; a thin outline makes it as strong as the semibold letters
 * beside it.
 */
const FALLBACK_BOLD = 0.03;

/** Hebrew and Arabic words with the spaces between them. */
const LEFTWARD =
	/[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]+(?: +[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]+)*/g;

/**
 * Letters in the order they stand on the page. The library joins Arabic letters but its turning of
 * lines comes after the letters have become glyph numbers, too late for an embedded face. A
 * non-joiner between turned letters keeps the library from joining them a second time, the wrong
 * way round.
 */
function visual(doc: jsPDF, text: string): string {
	const { processArabic } = doc as unknown as { processArabic(text: string): string };
	return text.replace(LEFTWARD, (words) => [...processArabic(words)].reverse().join('\u200c'));
}

/**
 * Runs are set one after the other along the baseline: the library's own anchoring is wrong for
 * turned text.
 */
function setRuns(doc: jsPDF, mark: TextMark, mode: 'fill' | 'stroke'): void {
	const weight: Weight = mark.weight ?? 'regular';
	const turn = ((mark.turn ?? 0) * Math.PI) / 180;
	const across = (text: string): number => textWidth(text, mark.size, weight);
	let along = (mark.anchor ?? 'start') === 'start' ? 0 : startOf(mark.anchor, across(mark.text));
	doc.setFontSize(mark.size * POINTS_PER_MM);
	const runs = faceRuns(mark.text, weight);
	for (const run of runs) {
		doc.setFont(run.face, 'normal');
		const x = mark.x + along * Math.cos(turn);
		const y = mark.y - along * Math.sin(turn);
		const bold = mode === 'fill' && weight === 'semibold' && run.face === 'fallback';
		if (bold) setStroke(doc, mark.ink ?? 'ink', { width: mark.size * FALLBACK_BOLD, dash: [] });
		doc.text(visual(doc, run.text), x, y, {
			angle: mark.turn ?? 0,
			renderingMode: bold ? 'fillThenStroke' : mode,
		});
		if (runs.length > 1) along += across(run.text);
	}
}
