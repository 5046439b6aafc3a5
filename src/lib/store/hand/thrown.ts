import { factIn, type SharedDocument, writeFact } from '../document';

/** Since when a job lies in the trash, for all devices of a shop: milliseconds since 1970. */
const THROWN = 'thrown';

/** Null in use, as somebody has said; undefined where its document says nothing of it. */
export function thrownIn(doc: SharedDocument): number | null | undefined {
	const at = factIn(doc, THROWN);
	return at === undefined || at === null || typeof at === 'number' ? at : undefined;
}

export function writeThrown(doc: SharedDocument, at: number | null): void {
	doc.together(() => writeFact(doc, THROWN, at));
}
