import type { Plan } from '../plan';
import { pagesOf, type PdfKind } from './output-files';
import { drawingSvg } from './pens';

/** A page as it will be printed, for the screen. */
interface ShownPage {
	/** Counted from 1. */
	readonly n: number;
	readonly name: string;
	/** Of its paper, mm. */
	readonly width: number;
	readonly height: number;
	/**
	 * An SVG element: in the colours of the screen and as wide as what it stands in, or in those of
	 * paper at its true size.
	 */
	readonly svg: string;
}

/** Some pages of a paper, and how many it has. */
export interface ShownPages {
	readonly of: number;
	readonly pages: readonly ShownPage[];
}

/** The pages of a paper from one on, counted from 0; only those are drawn. */
export function shownPages(
	kind: PdfKind,
	plan: Plan,
	from: number,
	count: number,
	colours: 'css' | 'inline' = 'css',
): ShownPages {
	const all = pagesOf(kind, plan);
	const pages = all.slice(from, from + count).map((page, i) => ({
		n: from + i + 1,
		name: page.name,
		width: page.width,
		height: page.height,
		svg: drawingSvg(page, { colours }),
	}));
	return { of: all.length, pages };
}
