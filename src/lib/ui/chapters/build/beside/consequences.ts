import { type Path, valueAt, type JobFile, troublesOf } from '../../../../job';
import { printLength, printMoney, type Ruler, showVolume, snap } from '../../../../measure';
import type { Plan } from '../../../../plan';
import { cutNow, figuresOn } from '../../../../print';
import { liveFigures, showPull } from '../../../shell';
import { lengthStored } from '../../../fields';
import { roomToSpare } from './box-words';

/** One thing a change does: 'width' '717.2' → '693.1', or what stays the same. */
export interface Consequence {
	readonly what: string;
	readonly from?: string;
	readonly to: string;
	readonly kind?: 'good' | 'warn';
	readonly after?: string;
}

/** What is asked: which fields, what they held, and the plans before and after. */
export interface ChangeInHand {
	readonly file: JobFile;
	readonly path: Path;
	readonly label: string;
	readonly all: readonly Path[];
	readonly was: readonly unknown[];
	readonly before: Plan;
	readonly after: Plan;
	readonly ruler: Ruler;
	readonly currency: string;
}

/** What a change comes to, nearest first: the field, its thing, then sheets, cloth and money. */
export function consequencesOf(change: ChangeInHand): Consequence[] {
	return [...fieldsOf(change), ...thingOf(change), ...cutOf(change), ...jobOf(change)];
}

function fieldsOf({ file, label, all, was, ruler }: ChangeInHand): Consequence[] {
	return all.flatMap((path, i) => {
		const now = valueAt(file, path);
		if (now === was[i]) return [];
		const word = all.length > 1 ? `${label}, ${String(path.at(-1))}` : label;
		return [{ what: word, from: shown(was[i], ruler), to: shown(now, ruler) }];
	});
}

function shown(value: unknown, ruler: Ruler): string {
	const length = lengthStored(value);
	if (length?.ok) return printLength(length.value, ruler).text;
	return value === undefined || value === null || value === '' ? 'none' : String(value);
}

function thingOf(change: ChangeInHand): Consequence[] {
	const { file, path, before, after, ruler } = change;
	const id = valueAt(file, [...path.slice(0, 2), 'id']);
	if (path[0] === 'boxes') return boxOf(String(id), before, after, ruler);
	const size = (plan: Plan): string | null => {
		const sizes = plan.panels.find((p) => p.id === id)?.detail?.fit.sizes.board;
		return sizes ? figuresOn(ruler).size(sizes.length, sizes.width) : null;
	};
	const [old, now] = [size(before), size(after)];
	return path[0] === 'panels' && old && now && old !== now
		? [{ what: 'board', from: old, to: now }]
		: [];
}

function boxOf(id: string, before: Plan, after: Plan, ruler: Ruler): Consequence[] {
	const [old, now] = [before, after].map((p) => p.boxes.find((b) => b.id === id)?.figures);
	const box = after.job.boxes.find((b) => b.id === id);
	if (!old || !now || !box) return [];
	const f = figuresOn(ruler);
	const net = (b: typeof now): number => b.chambers.reduce((sum, c) => sum + c.net, 0);
	const made: Consequence[] = [];
	if (old.solved && now.solved && old.solved.rounded !== now.solved.rounded) {
		const { dimension, rounded, wanted } = now.solved;
		const after = ` for ${showVolume(wanted, ruler)}`;
		made.push({ what: dimension, from: f.bench(old.solved.rounded), to: f.bench(rounded), after });
	}
	const [a, b] = [showVolume(net(old), ruler), showVolume(net(now), ruler)];
	if (a !== b) made.push({ what: 'net', from: a, to: b });
	const spare = roomToSpare(box, now);
	if (spare !== null && now.fit.fits) {
		made.push({ what: '', to: `${f.bench(snap(spare))} to spare in the space`, kind: 'good' });
	} else if (now.fit.fits === false) {
		made.push({ what: '', to: 'too large for the space', kind: 'warn' });
	}
	return made;
}

/** What the change does to parts that are cut: those it makes wrong, and those it needs no more. */
function cutOf({ before, after }: ChangeInHand): Consequence[] {
	const [old, now] = [cutNow(before), cutNow(after)];
	const wrong = now.wrong.filter((w) => !old.wrong.includes(w));
	const right = old.wrong.filter((w) => !now.wrong.includes(w));
	const over = now.over.filter((w) => !old.over.includes(w));
	return [
		...(wrong.length > 0
			? [{ what: 'cut already, cut again:', to: wrong.join('; '), kind: 'warn' as const }]
			: []),
		...(right.length > 0
			? [{ what: 'cut already, fits again:', to: right.join('; '), kind: 'good' as const }]
			: []),
		...(over.length > 0
			? [{ what: 'cut and not needed now:', to: over.join('; '), kind: 'warn' as const }]
			: []),
	];
}

function jobOf({ before, after, ruler, currency }: ChangeInHand): Consequence[] {
	const [old, now] = [liveFigures(before), liveFigures(after)];
	const money = (n: typeof now): string => printMoney(n.material, currency, ruler.decimal);
	const pull = (n: typeof now): string => showPull(n.pull, ruler);
	const more = troublesOf(after.problems).length - troublesOf(before.problems).length;
	return [
		same('sheets', String(old.sheets), String(now.sheets)),
		...(pull(old) === pull(now) ? [] : [same('cloth', pull(old), pull(now))]),
		...(money(old) === money(now) ? [] : [same('material', money(old), money(now))]),
		...(more > 0 ? [{ what: '', to: `${more} more to look at`, kind: 'warn' as const }] : []),
	];
}

function same(what: string, from: string, to: string): Consequence {
	return from === to ? { what, to, after: ', same' } : { what, from, to };
}
