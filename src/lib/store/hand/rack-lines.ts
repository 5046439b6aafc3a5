import type { JobFile } from '../../job';

/** What goes into the job's own document: it keeps the rack it had before it shared one. */
export function withOwnRack(file: JobFile, own: JobFile): JobFile {
	const mine: JobFile = { ...file };
	for (const part of ['stock', 'shop'] as const) {
		delete mine[part];
		if (part in own) Object.assign(mine, { [part]: own[part] });
	}
	return mine;
}

/** The rack as it is kept, with offcuts and rolls more. */
export function withLines(
	file: unknown,
	more: Readonly<Partial<Record<'offcuts' | 'rolls', readonly unknown[]>>>,
): unknown {
	const lists = Object.entries(more).filter(([, list]) => list.length > 0);
	if (lists.length === 0) return file;
	const { stock, ...rest } = file as JobFile;
	const longer = lists.map(([name, list]) => {
		const there: unknown = stock?.[name as keyof typeof more];
		return [name, [...(Array.isArray(there) ? (there as unknown[]) : []), ...list]];
	});
	return { ...rest, stock: { ...stock, ...(Object.fromEntries(longer) as object) } };
}

export function withoutOffcuts(file: unknown, gone: ReadonlySet<unknown>): unknown {
	const { stock, ...rest } = file as JobFile;
	const offcuts = (stock?.offcuts ?? []).filter((line) => !gone.has(line));
	return { ...rest, stock: { ...stock, offcuts } };
}
