import type { OutputKind } from '../../print';

/** A paper, or files, that can be saved. */
export interface PaperOffer {
	readonly kind: OutputKind;
	readonly title: string;
	/** What it is for. */
	readonly text: string;
	/** There is nothing to put on it. */
	readonly isOff?: boolean;
}
