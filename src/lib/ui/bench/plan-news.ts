import type { Plan } from '../../plan';
import type { Figures } from '../../print';
import { cutWords } from '../chapters/boards';
import { layoutKey } from '../state';

/** Cuts told one by one; of more the number says enough. */
const TOLD = 4;

/** A sheet as the bench reads it. */
interface ReadSheet {
	/** Told apart by what is cut, whatever its number. */
	readonly key: string;
	readonly n: number;
	readonly isCut: boolean;
	/** Each cut in the words of the bench, in order. */
	readonly cuts: readonly { readonly n: number; readonly words: string }[];
}

/** What of a newer plan the bench would read otherwise. */
export interface PlanNews {
	/** In words, a line each. */
	readonly lines: readonly string[];
	/** Keys of the sheets that go, or read otherwise. */
	readonly changed: readonly string[];
}

/**
 * What a person who cuts by one plan would find otherwise in another; null for nothing. Sheets are
 * known by what is cut of them: one that only goes by another number is the same sheet.
 */
export function planNews(before: Plan, after: Plan, figures: Figures): PlanNews | null {
	const was = readSheets(before, figures).filter(({ isCut }) => !isCut);
	const is = readSheets(after, figures);
	const now = new Map(is.map((sheet) => [sheet.key, sheet]));
	const told = was.map((sheet) => ({ sheet, lines: linesOf(sheet, now.get(sheet.key)) }));
	const known = new Set(was.map(({ key }) => key));
	const come = is.filter(({ key, isCut }) => !isCut && !known.has(key));
	const lines = [
		...told.flatMap((one) => one.lines),
		...(come.length > 0
			? [
					`${come.length === 1 ? 'One sheet is' : `${come.length} sheets are`} new: ${come.map(({ n }) => `sheet ${n}`).join(', ')}.`,
				]
			: []),
	];
	if (lines.length === 0) return null;
	const changed = told.filter((one) => one.lines.length > 0).map(({ sheet }) => sheet.key);
	return { lines, changed };
}

function linesOf(was: ReadSheet, is: ReadSheet | undefined): string[] {
	if (!is) return [`Sheet ${was.n} goes: its parts are laid out otherwise.`];
	if (is.isCut) return [`Sheet ${was.n} was marked as cut elsewhere.`];
	const moved = is.n === was.n ? [] : [`Sheet ${was.n} is sheet ${is.n} now.`];
	const other = is.cuts.filter(({ words }, i) => words !== was.cuts[i]?.words);
	const told = other
		.slice(0, TOLD)
		.map(({ n, words }) => `Sheet ${was.n}, cut ${n} reads now: ${words}.`);
	const more = other.length - told.length;
	return [...moved, ...told, ...(more > 0 ? [`So do ${more} more cuts of it.`] : [])];
}

function readSheets(plan: Plan, figures: Figures): ReadSheet[] {
	let n = 0;
	const sheets: ReadSheet[] = [];
	for (const boards of plan.boards)
		for (const [index, { cuts }] of boards.answer.layouts.entries()) {
			n++;
			if (boards.faults.length > 0) continue;
			const at = { plan, boards, index };
			const read = cuts.map((cut, i) => {
				const { fence, from, line, gives } = cutWords(at, cut, cuts[i - 1], figures);
				return {
					n: cut.n,
					words: [fence && `fence ${fence} from the ${from}`, line, gives]
						.filter(Boolean)
						.join(', '),
				};
			});
			const isCut = boards.sources[index]?.cut === true;
			sheets.push({ key: layoutKey(boards, index), n, isCut, cuts: read });
		}
	return sheets;
}
