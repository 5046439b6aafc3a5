import { readFileSync } from 'node:fs';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/**
 * Opens a printed file with a reader that is not ours: it must open, have pages, and carry text on
 * the first one.
 */
const file = process.argv[2];
if (file === undefined) {
	process.stderr.write('Give the PDF file to look into.\n');
	process.exit(2);
}
const pdf = await getDocument({ data: new Uint8Array(readFileSync(file)), verbosity: 0 }).promise;
const page = await pdf.getPage(1);
const { items } = await page.getTextContent();
const words = items.filter((item) => 'str' in item && item.str.trim() !== '').length;
process.stdout.write(`${file}: ${pdf.numPages} pages, ${words} texts on the first\n`);
process.exitCode = pdf.numPages > 0 && words > 0 ? 0 : 1;
