import type { LabelSheet } from '../../../job';
import { lastOf } from '../../../measure';
import { type Mark, qrMark, shortened, type TextMark, textWidth, wrapped } from '../../drawing';
import type { LabelText } from './label-text';

const INSET = 2.5;
/** Height of the mark, and of the words under the code; mm. */
const MARK = 6;
const UNDER = 2.2;
const LEADING = 1.18;
/** Sizes tried for what is said, until all of it has room. */
const SIZES = [2.7, 2.5, 2.3, 2.1, 1.9, 1.7];

/** One label from its upper left corner, mm. */
export function labelMarks(label: LabelText, sheet: LabelSheet): Mark[] {
	const code = Math.min(sheet.height - 2 * 1.5 - 2 * UNDER, 20);
	const width = sheet.width - 2 * INSET - code - 1;
	const mark = shortened(label.mark, width - textWidth(label.nth, 2.8) - 2, MARK, 'semibold');
	const { size, lines, bold } = saidIn(label, width, sheet.height - INSET - MARK - 1.5);
	const left = sheet.width - INSET - code + 1.5;
	const top = (sheet.height - code) / 2 - UNDER;
	const words = wrapped(label.code, code, UNDER).slice(0, 2);
	const text = (x: number, y: number, text: string, size: number): TextMark => ({
		kind: 'text',
		x,
		y,
		text,
		size,
	});
	const marks: Mark[] = [
		{ ...text(INSET, INSET + 4.4, mark, MARK), weight: 'semibold' },
		...lines.map((line, i): Mark => ({
			...text(INSET, INSET + 5.4 + size * (1 + i * LEADING), line, size),
			...(i < bold ? { weight: 'semibold' } : {}),
		})),
		qrMark(label.qr, left, top, code),
		...words.map((line, i): Mark => ({
			...text(left + code / 2, top + code + UNDER * (0.6 + i), line, UNDER),
			anchor: 'middle',
		})),
		{ ...text(INSET + width, INSET + 4.4, label.nth, 2.8), anchor: 'end' },
	];
	return marks.filter((m) => m.kind !== 'text' || m.text !== '');
}

/** Its name and all it says, as large as there is room for; the last line is cut where none is. */
function saidIn({ name, says }: LabelText, width: number, height: number) {
	const most = (size: number): number => Math.max(1, Math.floor(height / (size * LEADING)));
	const set = (size: number) => {
		const named = wrapped(name, width, size, 'semibold');
		const lines = [...named.slice(0, 2), ...together(says, width, size)];
		return { size, lines, bold: Math.min(2, named.length) };
	};
	// The first size nearly always has room; the others are not set to no purpose.
	for (const size of SIZES) {
		const found = set(size);
		if (found.lines.length <= most(size)) return found;
	}
	const smallest = set(lastOf(SIZES));
	const kept = smallest.lines.slice(0, most(smallest.size));
	return {
		...smallest,
		lines: [...kept.slice(0, -1), shortened(`${lastOf(kept)} …`, width, smallest.size)],
	};
}

/** Short remarks side by side; one that is too long for a line goes on over the next. */
function together(says: readonly string[], width: number, size: number): string[] {
	const lines: string[] = [];
	for (const say of says) {
		const joined = lines.length === 0 ? say : `${lastOf(lines)} · ${say}`;
		if (lines.length > 0 && textWidth(joined, size) <= width) lines[lines.length - 1] = joined;
		else lines.push(...wrapped(say, width, size));
	}
	return lines;
}
