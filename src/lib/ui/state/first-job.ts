import type { JobFile } from '../../job';
import { FIRST_SAMPLE, SAMPLES, sample } from '../samples';
import type { Store, StoredJob } from '../store';
import type { DeskOpening } from './desk.svelte';

/**
 * The job to open with: the one a page left behind, else the one open last, else the first sample.
 * A database that cannot be read is no reason not to start.
 */
export async function firstJob(store: Store, left: StoredJob | null): Promise<DeskOpening> {
	if (left) return { ...left, file: left.file as JobFile };
	try {
		const last = await store.thing('open');
		const stored = typeof last === 'string' ? await store.job(last) : undefined;
		if (stored) return { ...stored, file: stored.file as JobFile };
	} catch {
		// Private windows may refuse; the title block says that nothing can be kept.
	}
	return newFromSample(SAMPLES.includes(FIRST_SAMPLE) ? FIRST_SAMPLE : (SAMPLES[0] ?? 'empty'));
}

/** A job of its own made from a sample: it carries the sample's rack. */
export async function newFromSample(name: string): Promise<DeskOpening> {
	return { id: newId(), file: await sample(name), sharesRack: false };
}

/** Marks of jobs need only differ within one browser. */
export function newId(): string {
	return crypto.randomUUID();
}

/**
 * An empty job on the shop's rack; the first one makes the rack, from the sample's saws and boards.
 */
export async function newEmpty(store: Store): Promise<DeskOpening> {
	const rack = await store.thing('rack').catch(() => null);
	const { stock, shop } = await sample(FIRST_SAMPLE);
	const file = await sample('empty');
	return {
		id: newId(),
		file: rack ? file : { ...file, stock: stock ?? {}, shop: shop ?? {} },
		sharesRack: true,
	};
}
