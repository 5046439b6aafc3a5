import { describe, expect, it } from 'vitest';
import { addressOf, addressStep, jobAsked } from '../../../src/lib/ui/address/job-address';

describe('the job in the address', () => {
	it('is read as it is written, whatever its mark', () => {
		for (const id of ['3f', 'a&b=c', 'Ü #/?'])
			expect(jobAsked(new URL(addressOf(id, '#boards/2'), 'http://here').search)).toBe(id);
		expect(new URL(addressOf('3f', '#boards/2'), 'http://here').hash).toBe('#boards/2');
	});

	it('is none in plain addresses', () => {
		expect(jobAsked('')).toBeNull();
		expect(jobAsked('?job=')).toBeNull();
		expect(jobAsked('?other=3')).toBeNull();
	});

	it('is fetched when the address changes, and named when the job does', () => {
		expect(addressStep('a', 'a', null)).toBe('none');
		expect(addressStep('b', 'a', 'a')).toBe('fetch'); // a link, back or forward
		expect(addressStep('a', 'b', 'a')).toBe('name'); // another job was opened here
		expect(addressStep(null, 'a', 'a')).toBe('name'); // an old plain address
	});
});
