import type { LinkState, Membership, Sharing, Shelf } from '../../../store';
import type { SharingTold } from './begin';

const LOOK_ONLY =
	'This device may only look: nothing was changed. Ask for a link that lets it work.';

/** How a browser that has joined a shop stands with it; of one that has not, that it has not. */
export class SharedView implements SharingTold {
	readonly membership: Membership | null;
	/** Null until the documents are here, and without a shop. */
	state = $state.raw<LinkState | null>(null);
	/** In words; empty without a shop. */
	words = $state('');
	/** In words, what the shop has not taken and why; empty for nothing. */
	notTaken = $state('');
	/** Rises whenever jobs nobody has in hand have come or changed. */
	carried = $state(0);
	/** Rises whenever somebody else has changed the open job. */
	changes = $state(0);
	sharing: Sharing | null = null;

	constructor(membership: Membership | null = null) {
		this.membership = membership;
	}

	/** Without a shop everything is one's own. */
	get mayEdit(): boolean {
		return this.membership?.right !== 'look';
	}

	/** Who may have changed what was not changed here. */
	get others(): string {
		return this.membership ? 'Another device or window' : 'Another window';
	}

	/** Says why nothing was changed, where it is seen. */
	refuse(where: { notice: string }): void {
		where.notice = LOOK_ONLY;
	}

	/** Keeps the documents of the shelf in step with the shop's. Without a shop it asks nobody. */
	async begin(shelf: Shelf): Promise<void> {
		if (this.membership)
			this.sharing = (await import('./begin')).begin(shelf, this.membership, this);
	}

	lookAgain(): void {
		this.sharing?.link.hurry();
	}

	stop(): void {
		this.sharing?.stop();
	}
}
