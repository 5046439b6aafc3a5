import { docOfJob, type SaveState, type Shelf, SHOP_DOC } from '../../../store';

/** How things stand between what was typed and what is kept, for each job by itself. */
export class Saver {
	/** Of the open job and the rack it draws on. */
	state = $state<SaveState>('saved');
	/**
	 * Documents of other jobs that are in memory only; they are written as soon as that is
	 * possible.
	 */
	others = $state.raw<readonly string[]>([]);
	/** In words, why nothing can be written; null while it can. */
	fault = $state<string | null>(null);
	#isCut = false;

	/**
	 * @param isInDocuments are all changes of the open job in its documents? Else they are in
	 * memory
	 * @param shelf none as long as the documents have not come
	 */
	look(id: string, isInDocuments: boolean, shelf: Shelf | null): void {
		const mine = [docOfJob(id), SHOP_DOC];
		const states = shelf ? mine.map((doc) => shelf.saving(doc)) : [];
		if (!isInDocuments) states.push(this.#isCut ? 'failed' : 'saving');
		this.state = (['failed', 'saving'] as const).find((s) => states.includes(s)) ?? 'saved';
		this.others = shelf?.unsaved().filter((doc) => !mine.includes(doc)) ?? [];
		if (isInDocuments) this.#isCut = false;
		if (this.state !== 'failed') this.fault = null;
		else if (!this.#isCut) this.fault = shelf?.fault() ?? null;
	}

	/** The documents do not come: what is typed is in memory. */
	fail(words: string): void {
		this.#isCut = true;
		this.state = 'failed';
		this.fault = words;
	}
}
