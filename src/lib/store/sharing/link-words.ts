import type { NotJoined } from './join-shop';
import type { LinkState } from './link';

const REFUSED: Readonly<Record<NotJoined, string>> = {
	secret: 'This shop knows no such link. Ask for a new one where its links are made.',
	withdrawn:
		'The link this device came by was withdrawn. What is here stays here; nothing more is exchanged. Ask for a new link.',
	older:
		"This page is older than the shop's planner. Close the other windows of it and reload this one; what was typed here stays and goes along then.",
	newer:
		"This page is newer than the shop's planner. Start the shop with the newer planner; until then what is typed stays here.",
	crowded: 'The shop has as many devices as it takes. Try again when one of them is closed.',
	words: 'The shop did not understand this page: reload it.',
	ending: 'The shop is just being ended. Try again in a minute.',
	away: 'The shop does not answer. Is it started, and is this device on its network?',
	'no database':
		'This browser gives no database, as in a private window, so a shop cannot be kept in it.',
};

/** Why a shop cannot be joined, and what helps. */
export const refusalWords = (why: NotJoined): string => REFUSED[why];

/**
 * How things stand with the shop, in words.
 *
 * @param behind documents with changes the shop has not got
 * @param clock writes a moment as this browser does
 */
export function linkWords(state: LinkState, behind: number, clock: (at: number) => string): string {
	switch (state.kind) {
		case 'reaching':
			return 'Reaching the shop …';
		case 'away':
			return `Away from the shop since ${clock(state.since)}: what is done here is kept here, and goes along by itself when it is back.`;
		case 'refused':
			return refusalWords(state.why);
		case 'joined':
			if (state.right === 'look') return 'Joined to the shop, to look only.';
			return behind > 0 ? 'Joined to the shop; telling it …' : 'Joined to the shop; all is alike.';
	}
}
