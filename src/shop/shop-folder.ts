import { randomBytes } from 'node:crypto';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { seedOf, SHOP_DOC, SPEECH } from '../lib/store';
import { ShopDocuments } from './documents';
import { FolderLogs } from './folder-logs';
import { PlaceRefused } from './keeping';
import type { KeptShop } from './kept-shop';
import { Links } from './links';
import { readJson, valueIn, writeWhole } from './whole-file';

/** Raised when an older planner would read the folder wrong. */
const FORMAT = 1;

/** What is kept of a shop as a whole. */
interface About {
	readonly format: number;
	readonly id: string;
	/** The form of the jobs in it; an older planner keeps its hands off. */
	readonly job: number;
}

/**
 * Opens a shop's folder, or makes it. One process at a time.
 *
 * @param rack of a new shop: what it begins with, so that no two devices begin it each on their own
 */
export async function openFolder(folder: string, rack: unknown): Promise<KeptShop> {
	try {
		mkdirSync(join(folder, 'documents'), { recursive: true, mode: 0o700 });
	} catch (fault) {
		throw cannotKeep(folder, fault);
	}
	const unlock = lock(folder);
	try {
		const about = await aboutShop(folder);
		const documents = await ShopDocuments.in(new FolderLogs(join(folder, 'documents')));
		const links = await Links.in(valueIn(join(folder, 'links.json')));
		await seeded(documents, rack);
		const close = async (): Promise<void> => {
			await documents.close();
			unlock();
		};
		return { id: about.id, documents, links, ...NO_OTHERS, close };
	} catch (fault) {
		unlock();
		throw fault instanceof PlaceRefused ? fault : cannotKeep(folder, fault);
	}
}

/** There is no other server, and the folder is always there. */
const NO_OTHERS: Omit<KeptShop, 'id' | 'documents' | 'links' | 'close'> = {
	...{ isAway: false, onAway: () => undefined },
	...{ onElsewhere: () => undefined, onLinks: () => undefined },
	...{ sayToOthers: () => undefined, onSaid: () => undefined },
};

export const cannotKeep = (folder: string, fault: unknown): PlaceRefused =>
	new PlaceRefused(
		`The shop cannot be kept in ${folder}: ${fault instanceof Error ? fault.message : String(fault)}. ` +
			'Give a folder this machine may write to, with --folder.',
	);

async function aboutShop(folder: string): Promise<About> {
	const path = join(folder, 'shop.json');
	const about = (await readJson(path)) as Partial<About> | undefined;
	if (about && !(typeof about.id === 'string' && typeof about.format === 'number'))
		throw new TypeError(`${path} is torn`);
	if ((about?.format ?? 0) > FORMAT || (about?.job ?? 0) > SPEECH.job)
		throw new PlaceRefused(
			`The shop in ${folder} was kept by a newer planner: start it with that one.`,
		);
	const id = about?.id ?? randomBytes(8).toString('hex');
	const now: About = { format: FORMAT, id, job: SPEECH.job };
	if (JSON.stringify(now) !== JSON.stringify(about)) await writeWhole(path, now);
	return now;
}

/** Everybody who joins finds a rack, and so makes none of their own. */
async function seeded(documents: ShopDocuments, rack: unknown): Promise<void> {
	const shop = await documents.use(SHOP_DOC);
	try {
		if (!shop?.isEmpty) return;
		const added = await documents.add(SHOP_DOC, seedOf(rack));
		if (!added.kept) throw new Error(added.why, { cause: added.fault });
	} finally {
		await documents.leave(SHOP_DOC);
	}
}

/** Held by this process: one that was killed may have had the same number. */
const mine = new Set<string>();

/** Two processes in one folder would tear its files: the second is told. */
function lock(folder: string): () => void {
	const path = join(folder, 'in-use');
	for (let tries = 0; ; tries++) {
		try {
			writeFileSync(path, String(process.pid), { flag: 'wx' });
			mine.add(path);
			return () => {
				mine.delete(path);
				rmSync(path, { force: true });
			};
		} catch (fault) {
			if ((fault as NodeJS.ErrnoException).code !== 'EEXIST') throw cannotKeep(folder, fault);
			const by = Number(readFileSync(path, 'utf8'));
			const isHeld = by === process.pid ? mine.has(path) : isRunning(by);
			if (tries > 2 || isHeld)
				throw new PlaceRefused(
					`Another shop's server (process ${by}) works in ${folder}: end that one first, or give another folder with --folder. ` +
						`If none is running, take away the file ${path}.`,
				);
			rmSync(path, { force: true });
		}
	}
}

function isRunning(pid: number): boolean {
	if (!Number.isSafeInteger(pid) || pid <= 0) return false;
	try {
		process.kill(pid, 0);
		return true;
	} catch (fault) {
		return (fault as NodeJS.ErrnoException).code === 'EPERM';
	}
}
