/*
 * Drawings and lists in good order, to be torn: between them they hold everything that is read.
 */

const svg = (inside: string, head = 'width="400mm" height="300mm" viewBox="0 0 400 300"'): string =>
	`<?xml version="1.0"?>\n<svg xmlns="http://www.w3.org/2000/svg" ${head}>${inside}</svg>`;

export const SVGS: readonly string[] = [
	svg('<path d="M10 10 L390 10 L390 290 L10 290 Z"/>'),
	svg(
		'<path d="M20,20h360a10 20 30 0 1 0 60v200q-20 30-60 10t-200 0s-40-20-100-30z" fill="none"/>',
	),
	svg(
		'<g transform="translate(5 5) rotate(3) scale(.9 1.1)"><polygon points="0,0 300,0 280,200 40,210"/></g>',
	),
	svg(
		'<defs><rect id="r" x="1" y="2" width="200" height="100" rx="9"/></defs><use href="#r" x="20"/><style>.a{display:none}</style><circle class="a" cx="9" cy="9" r="5"/>',
	),
	svg('<ellipse cx="150" cy="100" rx="120" ry="80" transform="matrix(1 .1 .2 1 3 4)"/>'),
	svg(
		'<svg x="10" y="10" width="300" height="200" viewBox="0 0 30 20"><path d="M1 1C9 0 20 3 29 1V19H1z"/></svg><!-- note --><![CDATA[ x ]]>',
	),
	svg(
		'<line x1="0" y1="0" x2="300" y2="0"/><polyline points="300,0 300,200 0,200"/><line x1="0" y1="200" x2="0" y2="0"/>',
	),
	svg(
		'<path style="display:inline" d="m 5e1 50 1e2-.5.5 80-100 1z M9 9"/>',
		'viewBox="0 0 200 200"',
	),
];

export const SVG_WORDS: readonly string[] = [
	...[
		'<!--',
		'-->',
		'<![CDATA[',
		']]>',
		'<?x ',
		'<g>',
		'</g>',
		'<svg>',
		'<',
		'>',
		'"',
		"'",
		'/',
		'&amp;',
	],
	...[
		'&#xffffffff;',
		'&x;',
		'<!DOCTYPE a [<!ENTITY b "cc">]>',
		'<use href="#r"/>',
		'<defs>',
		'<path d="',
	],
	...[
		'transform="',
		'rotate(',
		'matrix(0 0 0 0 0 0)',
		'scale(0)',
		'skewX(90)',
		'viewBox="0 0 0 0"',
	],
	...[
		'M',
		'm',
		'z',
		'A0 0 0 0 0 ',
		'a1e9 1e-9 45 1 1 ',
		'C',
		'Q',
		'T',
		'S',
		'h',
		'v',
		'e',
		'.',
		'-',
		',',
	],
	...[
		'<script>ran()</script>',
		' onload="ran()"',
		'style="',
		'<foreignObject>',
		'<image href="x"/>',
	],
];

const dxf = (entities: string, head = '0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n') =>
	`${head}0\nSECTION\n2\nENTITIES\n${entities}0\nENDSEC\n0\nEOF\n`;
const line = (x: number, y: number, u: number, v: number): string =>
	`0\nLINE\n8\nCUT\n10\n${x}\n20\n${y}\n11\n${u}\n21\n${v}\n`;

export const DXFS: readonly string[] = [
	dxf(line(0, 0, 400, 0) + line(400, 0, 400, 250) + line(400, 250, 0, 250) + line(0, 250, 0, 0)),
	dxf(
		'0\nLWPOLYLINE\n8\n0\n90\n4\n70\n1\n10\n0\n20\n0\n42\n0.2\n10\n300\n20\n0\n10\n300\n20\n200\n42\n-0.1\n10\n0\n20\n200\n',
	),
	dxf(
		'0\nPOLYLINE\n8\n0\n66\n1\n70\n1\n0\nVERTEX\n10\n0\n20\n0\n0\nVERTEX\n10\n200\n20\n0\n42\n1\n0\nVERTEX\n10\n200\n20\n90\n0\nVERTEX\n10\n0\n20\n90\n0\nSEQEND\n',
	),
	dxf('0\nCIRCLE\n8\nA\n10\n50\n20\n50\n40\n45\n0\nCIRCLE\n8\nB\n10\n50\n20\n50\n40\n5\n'),
	dxf(
		`${line(0, 0, 200, 0)}0\nARC\n10\n200\n20\n50\n40\n50\n50\n270\n51\n90\n${line(200, 100, 0, 100)}${line(0, 100, 0, 0)}`,
	),
	dxf('0\nELLIPSE\n10\n0\n20\n0\n11\n150\n21\n20\n40\n0.5\n41\n0\n42\n6.283185307179586\n'),
	dxf(
		'0\nSPLINE\n70\n11\n71\n3\n72\n8\n73\n4\n40\n0\n40\n0\n40\n0\n40\n0\n40\n1\n40\n1\n40\n1\n40\n1\n10\n0\n20\n0\n10\n100\n20\n200\n10\n200\n20\n200\n10\n300\n20\n0\n' +
			line(300, 0, 0, 0),
	),
	dxf(
		'0\nINSERT\n2\nB1\n10\n5\n20\n5\n41\n2\n42\n2\n50\n30\n',
		'0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n2\nB1\n10\n0\n20\n0\n0\nCIRCLE\n10\n0\n20\n0\n40\n80\n0\nINSERT\n2\nB1\n0\nENDBLK\n0\nENDSEC\n',
	),
];

export const DXF_WORDS: readonly string[] = [
	...[
		'0\nSECTION\n',
		'0\nENDSEC\n',
		'0\nEOF\n',
		'0\nINSERT\n2\nB1\n',
		'0\nVERTEX\n',
		'0\nSEQEND\n',
	],
	...[
		'0\nSPLINE\n',
		'0\nPOLYLINE\n66\n1\n',
		'0\nLWPOLYLINE\n',
		'42\n1\n',
		'42\n1e9\n',
		'42\n0\n',
		'10\n',
		'20\n',
	],
	...['40\n0\n', '40\n-5\n', '50\n1e9\n', '70\n1\n', '71\n0\n', '90\n999999999\n', '\r\n', '\n'],
	...[
		'0\nBLOCK\n2\nB1\n',
		'0\nENDBLK\n',
		'$INSUNITS\n70\n99\n',
		'67\n1\n',
		'210\n0\n220\n0\n230\n-1\n',
	],
];

export const CORNERS: readonly string[] = [
	'0 0\n400 0\n400 300\n0 300\n',
	'x;y\n0;0\n12,5;0\n12,5;30\n0;30\n',
	'0,0\n250,0\n260.5,180\n-3,190\n',
	'0\t0\n10 1/2 in\t0\n10 in\t8 in\n0\t8 in\n',
];

export const CORNER_WORDS: readonly string[] = [
	' ',
	',',
	';',
	'\t',
	'\n',
	'in',
	'mm',
	'-',
	'1/2',
	'x',
];

export const LISTS: readonly string[] = [
	'Part,Length,Width,Qty,Material\nSide,720,560,2,Birch 18\nShelf,"564",540,3,Birch 18\n',
	'Teil;Länge (mm);Breite (mm);Anzahl;Platte\nSeite;720,5;560;2;birch\nBoden;564;540,25;1;birch\n',
	'name\tlength (in)\twidth (in)\tcount\nTop\t28 1/2\t22\t1\n"Base ""A"""\t28\t22 1/4\t1\n',
	'720 x 560 x 18 2\n564,540,18,1\n',
];

export const LIST_WORDS: readonly string[] = [
	...[
		',',
		';',
		'\t',
		'\n',
		'\r',
		'"',
		'""',
		'=',
		'1/2',
		' in',
		'mm',
		'Length',
		'Qty',
		'Material',
		'grain',
		'2x',
		'birch',
	],
];
