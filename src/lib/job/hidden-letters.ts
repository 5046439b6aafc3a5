import type { Problem } from './problem';

/*
 * Letters nobody sees: control characters, which move a terminal's cursor or colour it; line and paragraph separators; and
 * the marks that turn the direction of reading around, by which a name reads as another one (Unicode Technical Report 36,
 * "Unicode Security Considerations", on bidirectional text spoofing). Joiners and the plain direction marks are left: real
 * names hold them.
 */
const HIDDEN = /[\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069\ufff9-\ufffb\ufeff]/u;
const EVERY = new RegExp(HIDDEN, 'gu');
/** A drawing carried along in a file has lines, and is never shown as text. */
const DRAWING = 'text';
/** Texts of several lines. */
const LINES: readonly PropertyKey[] = ['notes', 'note'];
const NAMED = 50;

/**
 * Takes hidden letters out of every text in `tree`, which is changed: none gets to the screen, the paper or a terminal. A
 * line break or tab inside a name becomes a space. Says where there were some.
 */
export function takeOutHidden(tree: object): Problem[] {
	const problems: Problem[] = [];
	const stack: { readonly holder: object; readonly path: Problem['path'] }[] = [
		{ holder: tree, path: [] },
	];
	for (let visit = stack.pop(); visit; visit = stack.pop()) {
		const { holder, path } = visit;
		for (const [key, value] of Object.entries(holder) as [string, unknown][]) {
			const here = [...path, Array.isArray(holder) ? Number(key) : key];
			if (typeof value === 'object' && value !== null) stack.push({ holder: value, path: here });
			if (typeof value !== 'string' || key === DRAWING || !HIDDEN.test(value)) continue;
			const clean = cleaned(value, LINES.includes(key));
			if (clean === value) continue;
			Reflect.set(holder, key, clean);
			if (problems.length < NAMED) problems.push(said(here, value));
		}
	}
	return problems;
}

function cleaned(text: string, lines: boolean): string {
	const whole = text.replace(/\r\n?/g, '\n');
	return whole.replace(EVERY, (letter) => {
		if (lines && (letter === '\n' || letter === '\t')) return letter;
		return /[\n\t\u2028\u2029]/.test(letter) ? ' ' : '';
	});
}

function said(path: Problem['path'], text: string): Problem {
	return {
		path,
		what: `This text holds letters that cannot be seen: "${showHidden(text.slice(0, 60))}".`,
		fix: 'They are left out on screen and paper. Type the text anew if it does not read as it should.',
		kind: 'check',
	};
}

/** The text with its hidden letters written out, `\u{202e}`: safe in any line of a terminal or a page. */
export function showHidden(text: string): string {
	return text.replace(EVERY, (letter) => `\\u{${letter.charCodeAt(0).toString(16)}}`);
}
