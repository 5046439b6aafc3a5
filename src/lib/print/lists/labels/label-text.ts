import type { Part } from '../../../design';
import { clothName, materialName, materialOf } from '../../../job';
import { printAngle } from '../../../measure';
import type { Plan } from '../../../plan';
import { soundCopies } from './sound-copies';
import type { RunPlan } from '../../../runs';
import { qrCode, type QrCode } from '../../drawing';
import { jobOf, jobText, ownerName } from '../../together';
import { type Figures, partFacesText, rackLabels } from '../../wording';

/** What stands on one label. */
export interface LabelText {
	readonly mark: string;
	/** '1 of 2' for one of several alike, '1 to 40 of 40' on their pile. */
	readonly nth: string;
	readonly name: string;
	/** What else is said, what matters most first. */
	readonly says: readonly string[];
	/** One thing of one job, in its QR code and in words under it. */
	readonly code: string;
	readonly qr: QrCode;
}

/**
 * A label for each piece of board, each blank of cloth, each offcut and either end of each run, in
 * that order.
 */
export function labelTexts(plan: Plan, figures: Figures): LabelText[] {
	return [
		...partLabels(plan, figures),
		...blankLabels(plan, figures),
		...offcutsToLabel(plan, figures),
		...runLabels(plan, figures),
	];
}

function partLabels(plan: Plan, figures: Figures): LabelText[] {
	const codes = codesOf(plan, plan.parts);
	return plan.parts.flatMap((part) => {
		const own = codes.get(part.id) ?? part.id;
		const qr = qrCode(own);
		return copiesOf(plan, part).map(({ nth, again }) => {
			const code = codeAgain(own, again);
			const says = labelSays(plan, part, figures);
			return {
				mark: part.label,
				nth,
				name: part.name,
				says: again > 0 ? [AGAIN, ...says] : says,
				...{ code, qr: again > 0 ? qrCode(code) : qr },
			};
		});
	});
}

/** What one label is for: a piece, how often it was cut again, or a pile of them. */
interface Copy {
	readonly nth: string;
	readonly again: number;
}

/**
 * Which of those alike each label is for: one a piece, or one for the pile where the shop marks no
 * more of them one by one, and then one for each that was cut again.
 */
function copiesOf(plan: Plan, thing: Pick<Part, 'id' | 'count'>): Copy[] {
	const { count } = thing;
	const each = soundCopies(plan, thing).map((again, i) => ({
		nth: count > 1 ? `${i + 1} of ${count}` : '',
		again,
	}));
	if (count === 1 || count <= plan.job.shop.labelEach) return each;
	const pile = { nth: `1 to ${count} of ${count}`, again: 0 };
	return [pile, ...each.filter(({ again }) => again > 0)];
}

/** A label for the back of each blank, which may bear the mark of the board it covers. */
function blankLabels(plan: Plan, figures: Figures): LabelText[] {
	const codes = codesOf(plan, plan.blanks);
	return plan.blanks.flatMap((blank) => {
		const own = `${codes.get(blank.id) ?? blank.id}-cloth`;
		const qr = qrCode(own);
		return copiesOf(plan, blank).map(({ nth, again }) => ({
			mark: blank.label,
			nth,
			name: `Cloth: ${blank.name}`,
			says: [
				...(again > 0 ? [AGAIN] : []),
				figures.size(blank.length, blank.width),
				clothName(plan.job, blank.cloth),
				`covers ${blank.covers}`,
				'on its back',
				jobText(plan, blank.id),
			],
			code: codeAgain(own, again),
			qr: again > 0 ? qrCode(codeAgain(own, again)) : qr,
		}));
	});
}

const AGAIN = 'cut again';

/** Another one than that of the piece that was spoiled: its label may still be about. */
const codeAgain = (code: string, again: number): string =>
	again === 0 ? code : `${code}-again${again > 1 ? again : ''}`;

/** '0142-B1': job and mark; where two of them carry one mark, their ids. */
function codesOf(
	plan: Plan,
	things: readonly Pick<Part, 'id' | 'label'>[],
): ReadonlyMap<string, string> {
	const marks = things.map((p) => p.label);
	const once = new Set(marks.filter((m) => marks.indexOf(m) === marks.lastIndexOf(m)));
	return new Map(
		things.map(({ id, label }) => [id, codeIn(plan, id, once.has(label) ? label : id)]),
	);
}

/**
 * Of its job: by its number, or its name where it has none; the same whether the job is planned by
 * itself or with others.
 */
function codeIn(plan: Plan, id: string, mark: string): string {
	const { number, name, tag } = jobOf(plan, id);
	const own = tag === '' ? mark : mark.slice(tag.length + 1);
	return [number === '' ? name : number, own].filter((t) => t !== '').join('-');
}

/** The name of an offcut begins with the job's number, where it has one that is short enough. */
function offcutCode(plan: Plan, mark: string): string {
	const { number } = plan.job;
	return number !== '' && mark.startsWith(number.trim()) ? mark : codeIn(plan, '', mark);
}

/**
 * Labels for what goes back to the rack; the offcuts of a sheet that is cut already carry theirs.
 */
function offcutsToLabel(plan: Plan, figures: Figures): LabelText[] {
	return plan.boards
		.filter((boards) => boards.faults.length === 0)
		.flatMap((boards) =>
			boards.answer.layouts.flatMap((layout, index) => {
				if (boards.sources[index]?.cut === true) return [];
				const labels = rackLabels({ plan, boards, index });
				return layout.offcuts.flatMap((offcut, i): LabelText[] => {
					const mark = labels[i];
					if (mark === undefined) return [];
					const material = materialOf(plan.job, boards.material);
					const says = [
						figures.size(offcut.length, offcut.width),
						materialText(plan, boards.material, material?.measured, figures),
						material?.grain === true ? grainText(offcut.length, figures) : '',
						`off sheet ${index + 1}`,
						jobText(plan, ''),
					].filter((t) => t !== '');
					const code = offcutCode(plan, mark);
					return [{ mark, nth: '', name: 'Offcut: rack it', says, code, qr: qrCode(code) }];
				});
			}),
		);
}

/** One for either end, which says where the other one goes. */
function runLabels(plan: Plan, figures: Figures): LabelText[] {
	const codes = codesOf(plan, plan.runs);
	return plan.runs.flatMap((run) => {
		const code = `${codes.get(run.id) ?? run.id}-run`;
		const qr = qrCode(code);
		const [one, other] = run.ends;
		return [...Array(run.count).keys()].flatMap((copy) =>
			(
				[
					[one, other],
					[other, one],
				] as const
			).map(([here, there]): LabelText => ({
				mark: run.label,
				nth: run.count > 1 ? `${copy + 1} of ${run.count}` : '',
				name: run.name,
				says: [
					`this end: ${here.name}`,
					`other end: ${there.name}`,
					`${figures.bench(run.cut)} ${figures.unit} long`,
					reelName(plan, run),
					jobText(plan, run.id),
				].filter((t) => t !== ''),
				...{ code, qr },
			})),
		);
	});
}

const reelName = ({ reels }: Plan, { reel }: RunPlan): string =>
	reels.find((r) => r.reel === reel)?.name ?? '';

function labelSays(plan: Plan, part: Part, figures: Figures): string[] {
	const size = figures.size(part.length, part.width);
	const what = part.shift ? 'blank ' : part.short ? 'LONG face ' : '';
	return [
		`${what}${size}`,
		...partFacesText(part, figures).split(', '),
		bevelsText(part, plan.job.shop.ruler.decimal),
		materialText(plan, part.material, part.thickness, figures),
		part.grain === 'length' ? grainText(part.length, figures) : '',
		part.show ? `● show face: ${part.face}` : '',
		handOf(plan, part),
		ownerName(plan, part.owner),
		jobText(plan, part.id),
	].filter((t) => t !== '');
}

function materialText(
	plan: Plan,
	id: string,
	thickness: number | undefined,
	figures: Figures,
): string {
	const name = materialName(plan.job, id);
	return thickness === undefined ? name : `${name}, ${figures.length(thickness)}`;
}

const grainText = (along: number, figures: Figures): string =>
	`grain along ${figures.bench(along)}`;

/** Of a panel that is one of a pair. */
function handOf({ panels }: Plan, { owner, id }: Part): string {
	const detail = panels.find((p) => p.id === owner)?.detail;
	if (!detail || detail.hand === null) return '';
	const right = detail.both ? id.endsWith('-R') : detail.hand === 'R';
	return right ? 'RIGHT (R)' : 'LEFT (L)';
}

const BEVELS = 'bevels ';

/**
 * All bevels in as few words as a label holds: those of one tilt together, each edge by its letter
 * or, where none meets it, by its side.
 */
export function bevelsText(part: Pick<Part, 'bevels'>, decimal: '.' | ','): string {
	const edges = new Map<string, string[]>();
	for (const { edge, side, tilt } of part.bevels) {
		const by = printAngle(tilt, decimal);
		edges.set(by, [...(edges.get(by) ?? []), edge === '' ? side : edge]);
	}
	const all = [...edges].map(([by, at]) => `${at.join(' ')} ${by}`);
	return all.length === 0 ? '' : `${BEVELS}${all.join(', ')}`;
}
