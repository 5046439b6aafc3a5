/**
 * Mutants that were looked at and change nothing that anybody could see, and why. By the name the
 * run gives them, so that one whose line has changed is looked at again.
 */
export const EQUIVALENT: ReadonlyMap<string, string> = new Map([
	[
		'src/lib/measure/money.ts:39 formats.set(key, made); -> nothing',
		'the formatter is made anew each time: slower, and no other answer',
	],
	[
		'src/lib/measure/ratio.ts:23 n < 0n -> n <= 0n',
		'minus nothing is nothing: the two sides of the choice are the same at 0',
	],
	[
		'src/lib/measure/ratio.ts:24 n < 0n -> n <= 0n',
		'minus nothing is nothing: the two sides of the choice are the same at 0',
	],
	['src/lib/measure/sum.ts:47 1 -> 2', 'of a sign only whether it is above nothing is asked'],
	['src/lib/measure/sum.ts:47 1 -> 2', 'of a sign only whether it is above nothing is asked'],
	[
		'src/lib/nest/audit/outline.ts:61 b.box.x >= a.box.x + a.box.length + gap -> b.box.x > a.box.x + a.box.length + gap',
		'one pair more is compared, and that one lies exactly the gap apart, which is no fault',
	],
	[
		'src/lib/nest/audit/outline.ts:158 dx >= within || dy >= within -> dx >= within && dy >= within',
		'a quick way past edges that are too far to matter: each of them measures at least `within`',
	],
	[
		'src/lib/nest/audit/outline.ts:168 0 -> 1',
		'the place along an edge of no length, whose two ends are one point',
	],
	[
		'src/lib/design/box/inside/clash.ts:49 out < magnet -> out <= magnet',
		'the ring at the full radius of the magnet is looked at right after in any case',
	],
	[
		'src/lib/design/box/vent/slot-pieces.ts:104 1 -> 2',
		'only the direction of what is up counts: the frame makes it one long',
	],
	[
		'src/lib/design/panel/layers/flush.ts:46 0 -> 1',
		'a filter that lets one piece more through by a tick, which is then measured',
	],
	[
		'src/lib/design/panel/layers/section.ts:82 1600 -> 2001',
		'how far past the board the level line is drawn, before it is cut off at the board',
	],
	[
		'src/lib/wrap/girth/develop.ts:79 on <= 0 -> on < 0',
		'where the edges of both flaps meet exactly at the end of one, both ways round are the same outline',
	],
	[
		'src/lib/wrap/girth/develop.ts:79 back <= 0 -> back < 0',
		'where the edges of both flaps meet exactly at the start of one, both ways round are the same outline',
	],
	[
		'src/lib/wrap/reliefs/reliefs.ts:95 place.turn > 0 -> place.turn >= 0',
		'no relief has a turn of nothing: a bend below two degrees asks for none',
	],
]);
