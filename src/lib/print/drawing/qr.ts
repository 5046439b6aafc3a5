import qrcode from 'qrcode-generator';
import type { PathMark, PathStep } from './drawing';
import { rect } from './path';

/** Blank modules round the code that a reader needs (ISO/IEC 18004). */
const QUIET_ZONE = 4;

export type QrCode = ReturnType<typeof qrcode>;

/** The code of a text, level M, which mends a smudge; made once for all copies of a part. */
export function qrCode(text: string): QrCode {
	const code = qrcode(0, 'M');
	code.addData(text, 'Byte');
	code.make();
	return code;
}

/**
 * A QR code as one filled path with its quiet zone, `size` mm square, from `x`, `y`. Runs of dark
 * modules are joined so that no hairline of paper shows between them.
 */
export function qrMark(code: QrCode, x: number, y: number, size: number): PathMark {
	const place = [x, y, size].join();
	const known = drawnAt.get(code);
	if (known?.place === place) return known.mark;
	const mark = modules(code, x, y, size);
	drawnAt.set(code, { place, mark });
	return mark;
}

/** Labels of pieces alike share their code, each in the same place of its label. */
const drawnAt = new WeakMap<QrCode, { readonly place: string; readonly mark: PathMark }>();

function modules(code: QrCode, x: number, y: number, size: number): PathMark {
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
	return { kind: 'path', steps, fill: 'ink' };
}

/**
 * The code of a text for a screen: the path of its dark modules, each 1 wide, within a square of
 * `size` with the quiet zone round it.
 */
export function qrPath(text: string): { readonly size: number; readonly d: string } {
	const code = qrCode(text);
	const count = code.getModuleCount();
	let d = '';
	for (let row = 0; row < count; row++)
		for (let column = 0; column < count; column++)
			if (code.isDark(row, column)) d += `M${QUIET_ZONE + column} ${QUIET_ZONE + row}h1v1h-1z`;
	return { size: count + 2 * QUIET_ZONE, d };
}
