/**
 * Writes src/lib/print/drawing/widths.ts from the fonts themselves:
 * `npx tsx src/setup/faces/widths.ts`. To be run again whenever a font package changes; a test
 * holds the table against the font files.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { nth } from '../../lib/measure';
import { readAdvances } from './ttf';

const FACES = {
	regular:
		'@expo-google-fonts/ibm-plex-sans-condensed/400Regular/IBMPlexSansCondensed_400Regular.ttf',
	semibold:
		'@expo-google-fonts/ibm-plex-sans-condensed/600SemiBold/IBMPlexSansCondensed_600SemiBold.ttf',
	fallback: 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf',
};

/** `41-3*600 7*512 ...`: gap since the last run in base 36, then run lengths and widths. */
function encode(width: ReadonlyMap<number, number>): string {
	const codes = [...width.keys()].sort((a, b) => a - b);
	const widthOf = (code: number | undefined): number | undefined =>
		code === undefined ? undefined : width.get(code);
	const tokens: string[] = [];
	let next = 0;
	for (let i = 0; i < codes.length;) {
		const first = nth(codes, i);
		let run = 1;
		while (codes[i + run] === first + run && widthOf(codes[i + run]) === widthOf(first)) run++;
		const gap = first - next;
		tokens.push(
			(gap > 0 ? `${gap.toString(36)}-` : '') +
				(run > 1 ? `${run.toString(36)}*` : '') +
				String(widthOf(first)?.toString(36)),
		);
		next = first + run;
		i += run;
	}
	return tokens.join(' ');
}

function wrapped(text: string): string {
	const lines: string[] = [];
	let line = '';
	for (const token of text.split(' ')) {
		if (line.length + token.length > 150) {
			lines.push(line);
			line = '';
		}
		line += (line === '' ? '' : ' ') + token;
	}
	return [...lines, line].join('\n');
}

const entries = Object.entries(FACES).map(([face, path]) => {
	const { unitsPerEm, width } = readAdvances(readFileSync(`node_modules/${path}`));
	return `\t${face}: {\n\t\tunitsPerEm: ${unitsPerEm},\n\t\truns: \`\n${wrapped(encode(width))}\`,\n\t},\n`;
});
writeFileSync(
	'src/lib/print/drawing/widths.ts',
	`/**
 * Advance widths of the printed faces, taken from the fonts by src/setup/faces/widths.ts; never
 * edit by hand. Each token is [gap to the last code point '-'] [run length '*'] width, all in base
 * 36.
 */
export const WIDTHS = {
${entries.join('')}} as const;
`,
);
