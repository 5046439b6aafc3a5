import { glance } from './glance';
import type { StoredJob, StoredThing } from './records';
import type { Store } from './store';

/**
 * The browser's database: the little the start reads at once, all else by a library that is fetched
 * when it is first needed.
 */
export function openStore(name = 'kerf-and-nap'): Store {
	let fetched: Promise<Store> | null = null;
	const whole = (): Promise<Store> => {
		fetched ??= import('./dexie-store').then(({ openDexieStore }) => openDexieStore(name));
		fetched.catch(() => (fetched = null));
		return fetched;
	};
	return {
		thing: async (key) =>
			fetched
				? (await whole()).thing(key)
				: ((await glance(name, 'things', key)) as StoredThing | undefined)?.value,
		job: async (id) =>
			fetched
				? (await whole()).job(id)
				: ((await glance(name, 'jobs', id)) as StoredJob | undefined),
		jobs: async () => (await whole()).jobs(),
		thrownJobs: async () => (await whole()).thrownJobs(),
		putJob: async (job) => (await whole()).putJob(job),
		changeJob: async (id, change) => (await whole()).changeJob(id, change),
		eraseJob: async (id) => (await whole()).eraseJob(id),
		setThing: async (key, value) => (await whole()).setThing(key, value),
		updatesAfter: async (doc, n) => (await whole()).updatesAfter(doc, n),
		lastUpdates: async () => (await whole()).lastUpdates(),
		append: async (addition) => (await whole()).append(addition),
		compact: async (doc, seen, bytes) => (await whole()).compact(doc, seen, bytes),
		steps: async (owner) => (await whole()).steps(owner),
		revisions: async (job) => (await whole()).revisions(job),
		addRevision: async (revision, most) => (await whole()).addRevision(revision, most),
		letGoPictures: async () => (await whole()).letGoPictures(),
		everything: async () => (await whole()).everything(),
		putEverything: async (all, way) => (await whole()).putEverything(all, way),
		onClosed: (tell) => void whole().then((store) => store.onClosed(tell), ignore),
		close: () => void fetched?.then((store) => store.close(), ignore),
	};
}

/** Whoever asks the store anything is told. */
const ignore = (): void => undefined;
