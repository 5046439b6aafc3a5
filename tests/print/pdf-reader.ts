import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** What an independent reader finds on one page, lengths in millimetres, y down. */
export interface ReadPage {
	readonly width: number; // points
	readonly height: number;
	readonly texts: readonly ReadText[];
	/** Straight strokes as they lie on the paper. */
	readonly lines: readonly (readonly [number, number, number, number])[];
}

/** Its foot at its left end, and how far it runs, mm. */
interface ReadText {
	readonly text: string;
	readonly x: number;
	readonly y: number;
	readonly width: number;
}

export interface ReadPdf {
	readonly pages: readonly ReadPage[];
	readonly labels: readonly string[] | null;
	readonly viewer: unknown;
	readonly info: Readonly<Record<string, unknown>>;
	/** Bookmarks with the page each leads to, from 0, and those below. */
	readonly bookmarks: readonly Bookmark[];
}

interface Bookmark {
	readonly title: string;
	readonly page: number;
	readonly below: readonly Bookmark[];
}

const MM = 25.4 / 72;

export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
	const task = getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 });
	const doc = await task.promise;
	const pages: ReadPage[] = [];
	for (let n = 1; n <= doc.numPages; n++) pages.push(await readPage(await doc.getPage(n)));
	const labels = await doc.getPageLabels();
	const viewer = await doc.getViewerPreferences();
	const { info } = await doc.getMetadata();
	const bookmarks = await marksOf(doc, await doc.getOutline());
	await task.destroy();
	return { pages, labels, viewer, info: info as Record<string, unknown>, bookmarks };
}

/** The pictures that are painted on each page, in their order: pixels across and down. */
export async function picturesOnPages(bytes: Uint8Array): Promise<[number, number][][]> {
	const task = getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 });
	const doc = await task.promise;
	const pages: [number, number][][] = [];
	for (let n = 1; n <= doc.numPages; n++) {
		const { fnArray, argsArray } = await (await doc.getPage(n)).getOperatorList();
		pages.push(
			fnArray.flatMap((fn, i) => {
				if (fn !== OPS.paintImageXObject) return [];
				const [, width, height] = argsArray[i] as [string, number, number];
				return [[width, height] as [number, number]];
			}),
		);
	}
	await task.destroy();
	return pages;
}

type Doc = Awaited<ReturnType<typeof getDocument>['promise']>;
type Entries = Awaited<ReturnType<Doc['getOutline']>>;

async function marksOf(doc: Doc, entries: Entries | undefined): Promise<Bookmark[]> {
	const marks = (entries ?? []).map(async ({ title, dest, items }) => {
		const [to] = dest as [Parameters<Doc['getPageIndex']>[0]];
		const below = await marksOf(doc, items as Entries);
		return { title, page: await doc.getPageIndex(to), below };
	});
	return Promise.all(marks);
}

type PdfPage = Awaited<ReturnType<Awaited<ReturnType<typeof getDocument>['promise']>['getPage']>>;

async function readPage(page: PdfPage): Promise<ReadPage> {
	const [, , width, height] = page.view as [number, number, number, number];
	const content = await page.getTextContent();
	const texts = content.items.flatMap((item) =>
		'str' in item && item.str.trim() !== ''
			? [
					{
						text: item.str,
						x: item.transform[4] * MM,
						y: (height - item.transform[5]) * MM,
						width: item.width * MM,
					},
				]
			: [],
	);
	return { width, height, texts, lines: await linesOf(page, height) };
}

/** Paths come as [verb, x, y ...]; the page's own matrix is followed. */
async function linesOf(page: PdfPage, height: number) {
	const { fnArray, argsArray } = await page.getOperatorList();
	const lines: [number, number, number, number][] = [];
	let matrix = [1, 0, 0, 1, 0, 0];
	const kept: number[][] = [];
	fnArray.forEach((fn, i) => {
		const args = argsArray[i];
		if (fn === OPS.save) kept.push(matrix);
		else if (fn === OPS.restore) matrix = kept.pop() ?? matrix;
		else if (fn === OPS.transform) matrix = times(matrix, args as number[]);
		else if (fn === OPS.constructPath) lines.push(...straight(args, matrix, height));
	});
	return lines;
}

function times(m: number[], n: number[]): number[] {
	const [a, b, c, d, e, f] = m as [number, number, number, number, number, number];
	const [g, h, i, j, k, l] = n as [number, number, number, number, number, number];
	return [
		a * g + c * h,
		b * g + d * h,
		a * i + c * j,
		b * i + d * j,
		a * k + c * l + e,
		b * k + d * l + f,
	];
}

function straight(args: unknown, m: number[], height: number): [number, number, number, number][] {
	const [, [path]] = args as [number, [Float32Array | null]];
	if (path === null || path === undefined) return [];
	const at = (x: number, y: number) => ({
		x: (m[0]! * x + m[2]! * y + m[4]!) * MM,
		y: (height - (m[1]! * x + m[3]! * y + m[5]!)) * MM,
	});
	const found: [number, number, number, number][] = [];
	let pen = at(0, 0);
	for (let i = 0; i < path.length;) {
		const verb = path[i++]!;
		if (verb === 0) pen = at(path[i++]!, path[i++]!);
		else if (verb === 1) {
			const to = at(path[i++]!, path[i++]!);
			found.push([pen.x, pen.y, to.x, to.y]);
			pen = to;
		} else if (verb === 2) {
			i += 4;
			pen = at(path[i++]!, path[i++]!);
		} else if (verb === 3) {
			i += 2;
			pen = at(path[i++]!, path[i++]!);
		}
	}
	return found;
}
