import { nth } from '../../measure';
import type { Page } from '../drawing';
import { hexText } from './pdf-text';

/*
 * The outline of a PDF (ISO 32000-1 12.3.3): its chapters, and below a chapter of several pages
 * these. Written by hand, for the library's own breaks at a letter whose two bytes are those of a
 * line end.
 */

interface Mark {
	readonly title: string;
	/** Which page, from 0. */
	readonly page: number;
	readonly below: readonly Mark[];
}

/** What is asked of the library; not all of it stands in its types. */
export interface PdfObjects {
	readonly events: { subscribe(when: string, work: () => void): void };
	newObjectDeferred(): number;
	/** Where the object stands in the file is where it is begun. */
	newObjectDeferredBegin(id: number, head: boolean): void;
	write(...text: string[]): void;
	getPageInfo(page: number): { readonly objId: number };
}

/** Adds the outline to what is written last of all. */
export function addBookmarks(out: PdfObjects, pages: readonly Page[]): void {
	const marks = chaptersOf(pages);
	let root = 0;
	out.events.subscribe('postPutResources', () => {
		root = out.newObjectDeferred();
		const ids = writeLevel(out, root, marks);
		out.newObjectDeferredBegin(root, true);
		out.write(
			`<< /Type /Outlines /First ${nth(ids, 0)} 0 R /Last ${nth(ids, ids.length - 1)} 0 R`,
			`/Count ${marks.length} >>`,
			'endobj',
		);
	});
	out.events.subscribe('putCatalog', () => {
		out.write(`/Outlines ${root} 0 R`, '/PageMode /UseOutlines');
	});
}

/** Pages that follow one another under one chapter; a page of several stands under each. */
export function chaptersOf(pages: readonly Page[]): Mark[] {
	const chapters: { title: string; page: number; below: Mark[] }[] = [];
	pages.forEach(({ name, chapter = name, further = [] }, page) => {
		for (const title of new Set([chapter, ...further])) {
			const last = chapters.at(-1);
			const mark = { title: name, page, below: [] };
			if (last?.title === title) last.below.push(mark);
			else chapters.push({ title, page, below: [mark] });
		}
	});
	return chapters.map((c) => (c.below.length > 1 ? c : { ...c, below: [] }));
}

/** Writes the entries of one level with all below them; returns their numbers. */
function writeLevel(out: PdfObjects, parent: number, marks: readonly Mark[]): number[] {
	const ids = marks.map(() => out.newObjectDeferred());
	marks.forEach(({ title, page, below }, i) => {
		const id = nth(ids, i);
		const children = writeLevel(out, id, below);
		const beside = [
			i > 0 ? `/Prev ${nth(ids, i - 1)} 0 R` : '',
			i < ids.length - 1 ? `/Next ${nth(ids, i + 1)} 0 R` : '',
		];
		// Closed: a negative count.
		const under =
			children.length === 0
				? ''
				: `/First ${nth(children, 0)} 0 R /Last ${nth(children, children.length - 1)} 0 R /Count -${children.length}`;
		const to = `/Dest [${out.getPageInfo(page + 1).objId} 0 R /Fit]`;
		out.newObjectDeferredBegin(id, true);
		out.write(
			[`<< /Title ${hexText(title)} /Parent ${parent} 0 R`, ...beside, under, to, '>>']
				.filter((t) => t !== '')
				.join(' '),
			'endobj',
		);
	});
	return ids;
}
