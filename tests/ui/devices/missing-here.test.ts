import { expect, test } from 'vitest';
import { missingWords } from '../../../src/lib/ui/devices/missing-here';

const ALL = { isSecure: true, keepsCopy: true, keepsAwake: true, hasCamera: true };
const NONE = { isSecure: false, keepsCopy: false, keepsAwake: false, hasCamera: false };

test('a browser that grants all has nothing to be told', () => {
	expect(missingWords(ALL)).toBe('');
});

test('a plain address is told with all that it costs', () => {
	const words = missingWords(NONE);
	expect(words).toMatch(/plain http/);
	expect(words).toMatch(/without the network.*awake at the bench.*camera/);
});

test('a certificate that is not trusted is told as such, and only what it costs', () => {
	const words = missingWords({ ...ALL, keepsCopy: false });
	expect(words).toMatch(/does not trust the certificate/);
	expect(words).not.toMatch(/awake|camera/);
});

test('what a browser never does is not blamed on the address', () => {
	expect(missingWords({ ...ALL, keepsAwake: false })).toBe(
		'What this browser does not do: the screen is not kept awake at the bench.',
	);
});
