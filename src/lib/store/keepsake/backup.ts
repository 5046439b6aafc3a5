import type { Everything, Store } from '../database';
import { bytesOfText, textOfBytes } from '../../job';

/** What a file of a backup says of itself. */
const FORMAT = 'kerf-and-nap backup';
/** Raised when an older planner would read a backup wrong. */
const VERSION_OF_BACKUP = 1;

/** Bytes stand in it as text. */
interface BackupFile {
	readonly format: typeof FORMAT;
	readonly version: number;
	/** Milliseconds since 1970. */
	readonly at: number;
	readonly everything: Everything;
}

/** A picture that an outline was traced from, as it stands in the file. */
interface WrittenPicture {
	readonly picture: string;
	readonly type: string;
}

/**
 * Everything in one file: jobs with their documents and steps, the trash, rack and shop, revisions.
 * Photographs are documents of their own; pictures that outlines were traced from are taken along.
 *
 * @param at milliseconds since 1970
 */
export async function backup(store: Store, at: number): Promise<string> {
	const everything = await store.everything();
	const things = everything.things.map(async ({ key, value }) => ({
		...{ key, value: value instanceof Blob ? await writtenOf(value) : value },
	}));
	const file: BackupFile = {
		...{ format: FORMAT, version: VERSION_OF_BACKUP, at },
		everything: { ...everything, things: await Promise.all(things) },
	};
	return JSON.stringify(file, (_, value: unknown) =>
		value instanceof Uint8Array ? { bytes: textOfBytes(value) } : value,
	);
}

/** What a file of a backup holds, or in words why it is none. */
export function readBackup(
	text: string,
): { readonly everything: Everything; readonly at: number } | { readonly refused: string } {
	let file: Partial<BackupFile> | null;
	try {
		file = JSON.parse(text) as Partial<BackupFile> | null;
	} catch {
		return { refused: 'This is no backup: the file is torn, or is no JSON.' };
	}
	if (file?.format !== FORMAT) return { refused: 'This is no backup of the planner.' };
	if (typeof file.version !== 'number' || file.version > VERSION_OF_BACKUP)
		return { refused: 'This backup is of a newer planner: put it back with that one.' };
	try {
		return { everything: everythingIn(file.everything), at: Number(file.at) || 0 };
	} catch {
		return { refused: 'This backup is torn: parts of it cannot be read.' };
	}
}

function everythingIn(all: Everything | undefined): Everything {
	const { jobs, things, updates, steps, revisions } = all ?? ({} as Everything);
	for (const list of [jobs, things, updates, steps, revisions])
		if (!Array.isArray(list)) throw new TypeError('no list');
	if (![...jobs].every(({ id }) => typeof id === 'string')) throw new TypeError('no mark');
	return {
		...{ jobs, steps },
		things: things.map(({ key, value }) => ({ key, value: pictureIn(value) ?? value })),
		updates: updates.map((row) => ({ ...row, bytes: bytesIn(row.bytes) })),
		revisions: revisions.map((row) => ({ ...row, packed: bytesIn(row.packed) })),
	};
}

const bytesIn = (written: unknown): Uint8Array =>
	bytesOfText((written as { readonly bytes: string }).bytes);

const writtenOf = async (blob: Blob): Promise<WrittenPicture> => ({
	picture: textOfBytes(new Uint8Array(await blob.arrayBuffer())),
	type: blob.type,
});

/** Null for anything else. */
function pictureIn(value: unknown): Blob | null {
	const { picture, type } = (value ?? {}) as Partial<WrittenPicture>;
	if (typeof picture !== 'string' || typeof type !== 'string') return null;
	return new Blob([bytesOfText(picture) as Uint8Array<ArrayBuffer>], { type });
}
