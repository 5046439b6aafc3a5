import { nth } from '../../../lib/measure';
import type { Random } from '../../../lib/nest';

/*
 * Values and texts that a program is seldom shown: the edges of numbers, letters that do not show,
 * words that mean something to a language or a browser.
 */

/** What marks a number that JSON can write and a program cannot hold: `"@@1e999@@"` -> 1e999. */
export const RAW = /"@@([^@"]*)@@"/g;

const NUMBERS: readonly unknown[] = [
	...[0, -0, 1, -1, 0.1, 1e-7, 5e-324, 1e-300, -5e-324, 0.005, 0.01, 0.02, 0.5],
	...[10, 90, 180, 360, 720, 1000, 9999.99, 10_000, 99_999, 100_000, 100_001, 1e6],
	...[1e9, 1e12, 1e15, 2 ** 31, 2 ** 32, 2 ** 53, 2 ** 53 + 2, 1e21, 1e100, 1e300],
	...[1.7976931348623157e308, -1e308, -1e9, -1000, -0.01],
	...['@@1e999@@', '@@-1e999@@', '@@1e-999@@', '@@0.1e1@@', '@@123456789012345678901234567890@@'],
];

const TEXTS: readonly string[] = [
	...['', ' ', '\u0000', '\n', '\t', '\ufeff', '\u200b', '\u202eabc', '\ud800', '\udfff', '\uffff'],
	...[
		'NaN',
		'Infinity',
		'-Infinity',
		'1e999',
		'0x10',
		'-0',
		'--5',
		'5-',
		'1,5',
		'1.5.5',
		'1 1/0 in',
	],
	...[
		'1/3 in',
		'7/64 in',
		'999999999 ft',
		'-5 mm',
		'5 mm mm',
		'５００',
		'٥٠٠',
		'1²',
		'½ in',
		'1e3 mm',
	],
	...['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty', 'valueOf', 'length'],
	...[
		'<script>ran()</script>',
		'"><img src=x onerror=ran()>',
		'</svg><svg onload=ran()>',
		'${1}',
		'{{1}}',
	],
	...[
		"'; DROP TABLE",
		'=1+1',
		'+1',
		'-1',
		'@SUM(A1)',
		'＝1+1',
		'\u00001',
		'&lt;&#x26;',
		']]>',
		'<!--',
		'%s%n',
	],
	...['javascript:ran()', 'data:text/html,x', '../../../etc/x', 'D:\\x', 'con', '.', '..', '/'],
	...[
		'e\u0301'.repeat(40),
		'👩‍👩‍👧‍👦',
		'𝒳𝒴',
		'ﷺ',
		'مرحبا',
		'漢字',
		'Ǆ',
		'ß',
		'İ',
		'\u{10ffff}',
		'\u0338\u0338\u0338',
	],
	...['x'.repeat(300), 'W'.repeat(3000), 'word '.repeat(500), '\n'.repeat(400), '('.repeat(2000)],
];

const OTHERS: readonly unknown[] = [null, true, false, [], {}, [[]], [null], { kind: 'none' }];

export function pick<T>(list: readonly T[], dice: Random): T {
	return nth(list, dice.int(list.length));
}

export function strangeNumber(dice: Random): unknown {
	return pick(NUMBERS, dice);
}

export function strangeText(dice: Random): string {
	return pick(TEXTS, dice);
}

export function strangeValue(dice: Random): unknown {
	const draw = dice.int(10);
	if (draw < 4) return strangeNumber(dice);
	if (draw < 8) return strangeText(dice);
	return structuredClone(pick(OTHERS, dice));
}
