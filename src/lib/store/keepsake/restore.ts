import {
	docOfJob,
	type Everything,
	hashIn,
	SHOP_DOC,
	type Store,
	type StoredJob,
	tracedIn,
} from '../database';
import { withRack } from '../rack';

/**
 * Puts a backup back, all or nothing.
 *
 * `replace`: what is in the store goes, and it is as it was. Documents in use must have been let go
 * (`Shelf.forget`) and other windows told after it (`Shelf.tellReplaced`).
 *
 * `beside`: jobs come to those there are. One that is there already just the same is left out, one
 * that is there otherwise comes as a job of its own. The rack of the shop stays the one there is: a
 * job that drew on the backup's carries that one with it.
 *
 * @param newId a mark no job has
 */
export async function restore(
	store: Store,
	everything: Everything,
	way: 'beside' | 'replace',
	newId: () => string,
): Promise<void> {
	if (way === 'replace') return store.putEverything(everything, way);
	const there = await store.everything();
	const hasRack = there.things.some(({ key }) => key === 'rack');
	const parts = everything.jobs.flatMap((job) => {
		const twin = there.jobs.find(({ id }) => id === job.id);
		if (twin && JSON.stringify(twin.file) === JSON.stringify(job.file)) return [];
		return [jobBeside(everything, job, { id: twin ? newId() : job.id, hasRack })];
	});
	const all = [shopBeside(everything, hasRack), picturesBeside(everything, there), ...parts];
	await store.putEverything(together(all), way);
}

/** A picture is the same wherever it is, so only those that are not here come. */
function picturesBeside(all: Everything, there: Everything): Everything {
	const here = new Set(there.updates.map(({ doc }) => doc));
	const updates = all.updates.filter(({ doc }) => hashIn(doc) !== null && !here.has(doc));
	return { ...NOTHING, updates };
}

/** The pictures that outlines of a job were traced from, for the job of this mark. */
function traced(all: Everything, from: string, to: string): Everything['things'] {
	const [old, now] = [tracedIn(from), tracedIn(to)];
	return all.things
		.filter(({ key }) => key.startsWith(old))
		.map(({ key, value }) => ({ key: now + key.slice(old.length), value }));
}

/** The shop's rack, where there is none yet. */
function shopBeside(all: Everything, hasRack: boolean): Everything {
	if (hasRack) return NOTHING;
	return {
		...NOTHING,
		things: all.things.filter(({ key }) => key === 'rack'),
		updates: all.updates.filter(({ doc }) => doc === SHOP_DOC),
	};
}

function jobBeside(
	all: Everything,
	job: StoredJob,
	{ id, hasRack }: { readonly id: string; readonly hasRack: boolean },
): Everything {
	const revisions = all.revisions
		.filter((revision) => revision.job === job.id)
		.map((revision) => ({ ...revision, job: id }));
	const things = traced(all, job.id, id);
	// Its document says that it draws on the shop's rack: the plain record begins another one.
	if (job.sharesRack && hasRack)
		return { ...NOTHING, jobs: [withItsRack(all, job, id)], things, revisions };
	const [from, to] = [docOfJob(job.id), docOfJob(id)];
	return {
		...NOTHING,
		jobs: [{ ...job, id }],
		things,
		updates: all.updates.filter(({ doc }) => doc === from).map((row) => ({ ...row, doc: to })),
		steps: all.steps
			.filter(({ owner }) => owner.startsWith(`${from} `))
			.map((step) => ({
				...step,
				owner: `${to}${step.owner.slice(from.length)}`,
				edits: step.edits.map(([doc, edits]) => [doc === from ? to : doc, edits] as const),
			})),
		revisions,
	};
}

function withItsRack(all: Everything, { merged: _, ...job }: StoredJob, id: string): StoredJob {
	const rack = all.things.find(({ key }) => key === 'rack')?.value;
	const file = typeof job.file === 'object' && job.file ? withRack(job.file, rack) : null;
	return { ...job, id, file: file ?? job.file, sharesRack: false };
}

const NOTHING: Everything = { jobs: [], things: [], updates: [], steps: [], revisions: [] };

function together(parts: readonly Everything[]): Everything {
	return {
		jobs: parts.flatMap(({ jobs }) => jobs),
		things: parts.flatMap(({ things }) => things),
		updates: parts.flatMap(({ updates }) => updates),
		steps: parts.flatMap(({ steps }) => steps),
		revisions: parts.flatMap(({ revisions }) => revisions),
	};
}
