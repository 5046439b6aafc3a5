import qrcode from 'qrcode-generator';
import type { PathMark, PathStep } from './drawing';
import { rect } from './path';

/** Blank modules round the code that a reader needs (ISO/IEC 18004). */
const QUIET_ZONE = 4;

type Code = ReturnType<typeof qrcode>;

/** The code made last: copies of a part carry the same one, and stand one after the other. */
let last: { readonly text: string; readonly code: Code } | null = null;

function codeOf(text: string): Code {
	if (last?.text === text) return last.code;
	const code = qrcode(0, 'M');
	code.addData(text, 'Byte');
	code.make();
	last = { text, code };
	return code;
}

/**
 * A QR code of a text as one filled path with its quiet zone, `size` mm square, from `x`, `y`. Level M mends a smudge;
 * runs of dark modules are joined so that no hairline of paper shows between them.
 */
export function qrMark(text: string, x: number, y: number, size: number, of?: string): PathMark {
	const code = codeOf(text);
	const count = code.getModuleCount();
	const module = size / (count + 2 * QUIET_ZONE);
	const steps: PathStep[] = [];
	for (let row = 0; row < count; row++)
		for (let from = 0; from < count;) {
			let to = from;
			while (to < count && code.isDark(row, to)) to++;
			if (to > from)
				steps.push(
					...rect(
						x + (QUIET_ZONE + from) * module,
						y + (QUIET_ZONE + row) * module,
						(to - from) * module,
						module,
					),
				);
			from = Math.max(to, from + 1);
		}
	return { kind: 'path', steps, fill: 'ink', ...(of === undefined ? {} : { of }) };
}
