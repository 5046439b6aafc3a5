/** A page as it goes to the printer: its paper in millimetres, its drawing at true size. */
export interface PageToPrint {
	readonly width: number;
	readonly height: number;
	/** Made by our own pen, which escapes every text. */
	readonly svg: string;
}

/** Pages laid out for the printer; `clear` takes them away again. */
export interface LaidPages {
	clear(): void;
}

/** Lays pages out beside what is on the screen, which is not printed as long as they stand. */
export function layPages(document: Document, pages: readonly PageToPrint[]): LaidPages {
	const sheets = document.createElement('div');
	sheets.className = 'pages-to-print';
	sheets.innerHTML = pages.map((page) => `<div class="${nameOf(page)}">${page.svg}</div>`).join('');
	// A style element would be refused: the app allows no rules but its own files'.
	const rules = new CSSStyleSheet();
	rules.replaceSync(rulesFor(pages));
	document.adoptedStyleSheets = [...document.adoptedStyleSheets, rules];
	document.body.append(sheets);
	return {
		clear: () => {
			document.adoptedStyleSheets = document.adoptedStyleSheets.filter((s) => s !== rules);
			sheets.remove();
		},
	};
}

/** Pages of one paper share a name; upright and turned ones may follow each other. */
function nameOf({ width, height }: PageToPrint): string {
	return `p${Math.round(width * 10)}x${Math.round(height * 10)}`;
}

/** No margin of the browser's: ours are on the page, and its scale must stay 1 : 1. */
function rulesFor(pages: readonly PageToPrint[]): string {
	const papers = [...new Map(pages.map((page) => [nameOf(page), page]))];
	const sizes = papers.map(
		([name, { width, height }]) =>
			`@page ${name} { size: ${width}mm ${height}mm; margin: 0; }\n` +
			`.pages-to-print > .${name} { page: ${name}; height: ${height - 0.2}mm; }`,
	);
	return [
		'@media screen { .pages-to-print { display: none; } }',
		'@media print { body > :not(.pages-to-print) { display: none !important; } }',
		'@media print { html, body { margin: 0; padding: 0; background: none; } }',
		'.pages-to-print > div { overflow: hidden; break-after: page; }',
		'.pages-to-print > div:last-child { break-after: auto; }',
		'.pages-to-print svg { display: block; }',
		...sizes,
	].join('\n');
}
