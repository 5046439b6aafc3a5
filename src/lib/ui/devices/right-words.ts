import type { Right } from '../../store';

/** What a link allows: as a choice, and said of a device. */
export const RIGHT_WORDS: Readonly<Record<Right, { choice: string; says: string }>> = {
	work: { choice: 'work: change jobs and rack', says: 'may work on jobs and rack' },
	look: { choice: 'look only', says: 'may look only' },
	all: { choice: 'all: make and withdraw links too', says: 'may do all, links too' },
};
