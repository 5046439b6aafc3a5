import {
	closeSync,
	existsSync,
	fsyncSync,
	lstatSync,
	mkdirSync,
	openSync,
	readdirSync,
	readFileSync,
	readlinkSync,
	renameSync,
	rmdirSync,
	rmSync,
	statSync,
	writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';

/** Where two sets of files stand while one makes way for the other: see set-swap.ts. */
export const WORK = '.kerf-and-nap';
/** The link in it that leads to the set that counts: 'old' or 'new'. */
export const DOOR = 'now';
/** Where there are no links: the old names while they are being taken away, and once they are. */
const AWAY = 'away';
const GONE = 'gone';
/** The process that is at work. */
export const BY = 'by';

/** A process is not taken to be still at it after this, ms: its number may be another's by then. */
const LONGEST_RUN = 600_000;

/**
 * Finishes what a run began that was stopped, and stopped itself at any moment begins again: each
 * link makes way for the file it leads to, or goes where it leads to none. Throws where that run is
 * still at it.
 */
export function settle(folder: string): void {
	const work = join(folder, WORK);
	if (!existsSync(work)) return;
	refuseWhileWritten(work);
	const names = namesOfBoth(work);
	takeAway(folder, work);
	for (const name of names) {
		const own = join(folder, name);
		const linked = isOurLink(own);
		const behind = join(work, linked ? DOOR : 'new', name);
		const isDue = linked || existsSync(join(work, GONE));
		if (isDue && existsSync(behind)) {
			mkdirSync(dirname(own), { recursive: true });
			renameSync(behind, own);
		} else if (linked) rmSync(own);
		noEmptyFolder(folder, dirname(name));
	}
	keptOnDisk(folder);
	rmSync(work, { recursive: true });
}

/** Without links: from here on the old names go, and `settle` gives the new ones. */
export function replaceInTurn(work: string, names: readonly string[]): void {
	const list = join(work, 'list');
	writeFileSync(list, JSON.stringify(names));
	renameSync(list, join(work, AWAY));
}

function takeAway(folder: string, work: string): void {
	const list = join(work, AWAY);
	if (!existsSync(list)) return;
	for (const name of JSON.parse(readFileSync(list, 'utf8')) as string[]) {
		rmSync(join(folder, name), { force: true });
		noEmptyFolder(folder, dirname(name));
	}
	renameSync(list, join(work, GONE));
}

function refuseWhileWritten(work: string): void {
	const by = existsSync(join(work, BY)) ? Number(readFileSync(join(work, BY), 'utf8')) : 0;
	const recent = Date.now() - statSync(work).mtimeMs < LONGEST_RUN;
	if (by > 0 && by !== process.pid && recent && isAlive(by))
		throw new Error(`another run (process ${by}) is writing there; wait until it has ended.`);
}

function isAlive(number: number): boolean {
	try {
		process.kill(number, 0);
		return true;
	} catch (error) {
		return (error as NodeJS.ErrnoException).code === 'EPERM';
	}
}

function namesOfBoth(work: string): string[] {
	const sides = ['old', 'new'].map((side) => join(work, side)).filter((side) => existsSync(side));
	const found = sides.flatMap((side) =>
		readdirSync(side, { recursive: true, encoding: 'utf8' }).filter((name) =>
			statSync(join(side, name)).isFile(),
		),
	);
	return [...new Set(found)];
}

function isOurLink(path: string): boolean {
	const found = lstatSync(path, { throwIfNoEntry: false });
	return found?.isSymbolicLink() === true && readlinkSync(path).split(/[/\\]/).includes(WORK);
}

/** A folder of ours that holds nothing any more goes with its last file. */
function noEmptyFolder(folder: string, within: string): void {
	const at = join(folder, within);
	if (within !== '.' && existsSync(at) && readdirSync(at).length === 0) rmdirSync(at);
}

/** The names of a folder on the disk; not every system lets that be asked for. */
export function keptOnDisk(folder: string): void {
	try {
		const handle = openSync(folder, 'r');
		fsyncSync(handle);
		closeSync(handle);
	} catch {
		// Then it is kept when the system finds time for it.
	}
}
