import { type Path, type Problem, textsIn } from '../problems';

/*
 * Letters nobody sees: control characters, which move a terminal's cursor or colour it; line and
 * paragraph separators; and the marks that turn the direction of reading around, by which a name
 * reads as another one (Unicode Technical Report 36, "Unicode Security Considerations", on
 * bidirectional text spoofing). Joiners and the plain direction marks are left: real names hold
 * them.
 */
const HIDDEN = /[\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069\ufff9-\ufffb\ufeff]/u;
const EVERY = new RegExp(HIDDEN, 'gu');
/** Texts of several lines. */
const LINES: readonly PropertyKey[] = ['notes', 'note', 'address', 'terms'];
const NAMED = 50;

/**
 * Takes hidden letters out of every text in `tree`, which is changed: none gets to the screen, the
 * paper or a terminal. A line break or tab inside a name becomes a space. Says where there were
 * some.
 */
export function takeOutHidden(tree: object): Problem[] {
	const problems: Problem[] = [];
	for (const { holder, key, text, path } of textsIn(tree)) {
		if (!HIDDEN.test(text)) continue;
		const clean = cleaned(text, LINES.includes(key));
		if (clean === text) continue;
		Reflect.set(holder, key, clean);
		if (problems.length < NAMED) problems.push(said(path, text));
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

function said(path: Path, text: string): Problem {
	return {
		path,
		what: `This text holds letters that cannot be seen: "${showHidden(text.slice(0, 60))}".`,
		fix: 'They are left out on screen and paper. Type the text anew if it does not read as it should.',
		kind: 'check',
	};
}

/**
 * The text with its hidden letters written out, `\u{202e}`: safe in any line of a terminal or a
 * page.
 */
export function showHidden(text: string): string {
	return text.replace(EVERY, (letter) => `\\u{${letter.charCodeAt(0).toString(16)}}`);
}
