import type { LinkTo } from '../../../store';

/** In milliseconds: the server says a word every twenty seconds, and is looked for ever slower. */
const SILENCE = 50_000;
const WAITS = { answer: 5000, first: 500, most: 15_000 };

/** The way to the documents on the server this page came from; no page speaks to another. */
export function linkTo({ secret, device }: { secret: string; device: string }): LinkTo {
	const address = new URL(location.origin);
	address.protocol = location.protocol === 'https:' ? 'wss:' : 'ws:';
	address.pathname = '/documents';
	const connect = (): WebSocket => new WebSocket(address);
	return { connect: connect as LinkTo['connect'], secret, device, waits: WAITS, silence: SILENCE };
}
