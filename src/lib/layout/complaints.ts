import { LOOSE, type Part } from '../design';
import type { Job, Path, PinnedLayout, Places, Problem, PulledCloth } from '../job';
import type { Blank } from '../wrap';
import { changedSince } from './boards';
import { blankChanged } from './rolls';
import type { BoardLayouts, ClothLayouts, HandRefusal } from './layouts';
import { sayMarks } from './say-marks';
import { tooManyCuts } from './most-cuts';

interface Laid {
	readonly parts: readonly Part[];
	readonly blanks: readonly Blank[];
	readonly boards: readonly BoardLayouts[];
	readonly cloths: readonly ClothLayouts[];
}

/**
 * What could not be laid out, said where the person can do something about it. `rollsLost`: cloths
 * a roll of which was refused when the job was read; where no other is left, that is why.
 */
export function complaints(
	job: Job,
	places: Places,
	laid: Laid,
	rollsLost: readonly string[],
): Problem[] {
	const rolled = laid.cloths.filter((c) => c.rolls.length > 0 || !rollsLost.includes(c.cloth));
	return [
		...laid.boards.flatMap((b) => b.answer.unplaced.map((u) => partLeft(job, places, laid, u))),
		...rolled.flatMap((c) => c.unplaced.map((u) => blankLeft(job, places, laid, u))),
		...job.pinned.flatMap((layout, i) => layout.placed.flatMap(gone(laid, layout, i))),
		...tooMany(job, laid),
		...laid.boards.flatMap((b) => b.refused.map((r) => notHeld(laid, r))),
		...job.pulled.flatMap((cloth, i) => cloth.placed.flatMap(goneBlank(laid, cloth, i))),
		...laid.boards.flatMap((b) => b.faults.map((f) => fault(b.material, f.where, f.what))),
		...tooManyCuts(laid.boards),
		...laid.cloths.flatMap((c) =>
			c.rolls.flatMap((r) => r.faults.map((f) => fault(r.roll, f.where, f.what))),
		),
	];
}

type Unplaced = ClothLayouts['unplaced'][number];

function partLeft(job: Job, places: Places, laid: Laid, u: Unplaced): Problem {
	const part = laid.parts.find((p) => p.id === u.id);
	const of = part ? marked(part) : u.id;
	return {
		path: pathOf(job, places, part?.owner ?? '', u.id),
		// The nest speaks of piece ids; the person knows marks and names.
		what: `${times(u.count)}${of} is on no sheet. ${u.why.replaceAll(u.id, of)}`,
		fix: 'Add a sheet that takes it, let it turn, or make it smaller.',
		kind: 'stop',
	};
}

function blankLeft(job: Job, places: Places, laid: Laid, u: Unplaced): Problem {
	const blank = laid.blanks.find((b) => b.id === u.id);
	const of = blank ? marked(blank) : u.id;
	return {
		path: pathOf(job, places, blank?.owner ?? '', u.id),
		what: `${times(u.count)}The cloth ${of} is on no roll. ${u.why.replaceAll(u.id, of)}`,
		fix: 'Add a roll that takes it, or place a seam.',
		kind: 'stop',
	};
}

/** Pinned sheets keep their parts: one that the job has no more is sawn for nothing. */
function gone(laid: Laid, layout: PinnedLayout, i: number) {
	const known = new Map(laid.parts.map((part) => [part.id, part]));
	return (at: PinnedLayout['placed'][number], j: number): Problem[] => {
		const { id } = at;
		if (at.spoiled) return [];
		const part = known.get(id);
		const changed = changedSince(part, layout, at);
		if (changed?.length === 0) return [];
		const what =
			part && changed
				? `${marked(part)} at another ${changed.join(', another ')} than it has now`
				: `${id}, which is no part of the job now`;
		const again = part ? ' It is cut again.' : '';
		return [
			{
				path: ['pinned', i, 'placed', j, 'id'],
				what: `${layout.cut ? 'A sheet that is cut' : 'A pinned sheet'} holds ${what}.${layout.cut ? again : ''}`,
				fix: layout.cut
					? 'Put the design back as it was, or keep the cut part where it was worked over to fit.'
					: 'Unpin the sheet so that it is laid out anew, or put the part back.',
				kind: 'check',
			},
		];
	};
}

/** Parts that are cut, or are to be off a sheet that is pinned, more than the job needs now. */
function tooMany(job: Job, { parts, boards }: Laid): Problem[] {
	return parts.flatMap((part): Problem[] => {
		const mine = boards.filter((b) => b.material === part.material);
		const [cut, open] = [held(mine, part.id, true), held(mine, part.id, false)];
		if (cut + open <= part.count) return [];
		const first = job.pinned.findIndex((p) => p.placed.some(({ id }) => id === part.id));
		const where = { path: ['pinned', first] };
		const need = `and the job needs ${part.count}.`;
		if (open === 0)
			return [
				{
					...where,
					what: `${cut} of ${marked(part)} are cut, ${need}`,
					fix: 'Keep what is over, or raise the count again.',
					kind: 'note',
				},
			];
		return [
			{
				...where,
				what: `${cut + open} of ${marked(part)} are cut or lie on pinned sheets, ${need}`,
				fix: 'Unpin a sheet that is not cut, so that nothing is cut for nothing, or raise the count again.',
				kind: 'check',
			},
		];
	});
}
/** How many of a part lie on the sheets that are cut, or on those pinned; only what is of use. */
function held(boards: readonly BoardLayouts[], id: string, isCut: boolean): number {
	const on = boards.flatMap(({ answer, sources }) =>
		answer.layouts.flatMap(({ placed }, i) => {
			const { pinned = false, cut = false, spoiled = [], misfit = [] } = sources[i] ?? {};
			const wrong = [...spoiled, ...misfit];
			return pinned && cut === isCut ? placed.filter((_, at) => !wrong.includes(at)) : [];
		}),
	);
	return on.filter((p) => p.id === id).length;
}

/** Cloth that is pulled keeps its blanks: one that is another now was cut for nothing. */
function goneBlank({ blanks }: Laid, cloth: PulledCloth, i: number) {
	return (at: PulledCloth['placed'][number], j: number): Problem[] => {
		const blank = blanks.find((b) => b.id === at.id);
		const changed = blankChanged(blank, cloth, at);
		if (at.spoiled || changed?.length === 0) return [];
		const now =
			blank && changed
				? `${marked(blank)} at another ${changed.join(', another ')} than it has now`
				: `${at.id}, which is no blank of the job now`;
		return [
			{
				path: ['pulled', i, 'placed', j, 'id'],
				what: `Cloth that is pulled holds ${now}.`,
				fix: blank
					? 'Work it over to fit, put the design back, or say that it was spoiled: then it is cut again.'
					: 'Keep the blank for another job, or put the design back.',
				kind: 'check',
			},
		];
	};
}

/** A part laid by hand that cannot lie there any more; it is laid out with the rest. */
function notHeld({ parts }: Laid, { place, what }: HandRefusal): Problem {
	return {
		path: ['byHand', place],
		what: `A part laid by hand is not kept where it lay. ${sayMarks(parts, what)}`,
		fix: 'Lay it elsewhere, or let it go; until then it is laid out with the rest.',
		kind: 'check',
	};
}

/** Mark and name, once where they are the same. */
const marked = (thing: { readonly label: string; readonly name: string }): string =>
	thing.label === thing.name ? thing.label : `${thing.label} ${thing.name}`;

const times = (count: number): string => (count > 1 ? `${count} pieces: ` : '');

function pathOf(job: Job, places: Places, owner: string, id: string): Path {
	const box = job.boxes.findIndex((b) => b.id === owner);
	if (box >= 0) return places.of('boxes', owner, box);
	const panel = job.panels.findIndex((p) => p.id === owner);
	if (panel >= 0) return places.of('panels', owner, panel);
	if (owner !== LOOSE) return [];
	const mark = id.replace(/^part\./, '');
	return places.of(
		'parts',
		mark,
		Math.max(
			0,
			job.parts.findIndex((p) => p.id === mark),
		),
	);
}

/** The auditor refused a layout of ours: it is not printed, and the person is told so. */
function fault(stock: string, where: string, what: string): Problem {
	return {
		path: ['stock'],
		what: `The layout on ${stock} failed its check (${where}: ${what}) and is not printed.`,
		fix: 'Plan again with another seed, and send us the job file.',
		kind: 'stop',
	};
}
