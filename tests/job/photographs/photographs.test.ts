import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	bareJpeg,
	MOST_BYTES,
	readJob,
	readJpeg,
	sha256,
	takeOutPictures,
	withPictures,
} from '../../../src/lib/job';
import { runs } from '../../depth';
import { carried, jpeg, photographOf, segment, withCamera } from './made-pictures';

describe('the hash a picture goes by', () => {
	it.each([
		// FIPS 180-4, the examples of NIST's cryptographic standards: "abc", two blocks, nothing.
		['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
		[
			'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
			'248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
		],
		['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
	])('is SHA-256 as published: %s', (text, hash) => {
		expect(sha256(new TextEncoder().encode(text))).toBe(hash);
	});

	it('is that of another maker for any bytes', () => {
		fc.assert(
			fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
				expect(sha256(bytes)).toBe(createHash('sha256').update(bytes).digest('hex'));
			}),
			{ numRuns: runs(300) },
		);
	});
});

describe('a picture that is kept', () => {
	it('is a bare JPEG, and says how large it is', () => {
		expect(readJpeg(jpeg(64, 48))).toEqual({ width: 64, height: 48 });
		expect(readJpeg(jpeg(1600, 1))).toEqual({ width: 1600, height: 1 });
	});

	it.each([
		['nothing', new Uint8Array(0), 'no JPEG'],
		['a drawing with a script', new TextEncoder().encode('<svg onload="x()"/>'), 'no JPEG'],
		['one with what a camera wrote', withCamera(jpeg(64, 48)), 'more than what it shows'],
		['one with something behind it', Uint8Array.from([...jpeg(64, 48), 0x3c]), 'torn'],
		['one cut off', jpeg(64, 48).slice(0, -2), 'torn'],
		['one of 60,000 pixels', jpeg(60_000, 60_000).slice(0, 400), '60000 x 60000'],
		['one a pixel too long', jpeg(1601, 8), '1601 x 8'],
		['one of too many bytes', new Uint8Array(MOST_BYTES + 1), '500 kB'],
	])('%s is none', (_, bytes, why) => {
		expect(readJpeg(bytes)).toEqual({ refused: expect.stringContaining(why) as string });
	});

	it('is made bare of what a camera wrote and of what follows it', () => {
		const plain = jpeg(64, 48);
		const told = [...withCamera(plain), ...segment(0xe1, [1, 2, 3])];
		expect(bareJpeg(Uint8Array.from(told))).toEqual(plain);
		expect(bareJpeg(plain)).toEqual(plain);
	});

	it('never reads past its end, whatever the bytes', () => {
		fc.assert(
			fc.property(fc.uint8Array({ maxLength: 400 }), fc.nat(300), (noise, cut) => {
				const torn = Uint8Array.from([...jpeg(64, 48).slice(0, cut), ...noise]);
				const read = readJpeg(bareJpeg(torn));
				expect('refused' in read || read.width > 0).toBe(true);
			}),
			{ numRuns: runs(300) },
		);
	});
});

describe('photographs in a job file', () => {
	const [one, other] = [jpeg(64, 48, 1), jpeg(64, 48, 2)];

	it('go out with the file and come back the same, and the job itself holds none', () => {
		const file = { name: 'Van', photographs: [photographOf(one), photographOf(other)] };
		const pictures = takeOutPictures({ ...file, pictures: carried(one, other) }).pictures;
		const out = withPictures(file, pictures);
		expect(JSON.stringify(out)).toContain('"pictures"');
		const back = takeOutPictures(JSON.parse(JSON.stringify(out)) as typeof out);
		expect(back.file).toEqual(file);
		expect([...back.pictures.values()]).toEqual([...pictures.values()]);
		expect(back.torn).toEqual([]);
		expect(withPictures(file, new Map())).toBe(file);
	});

	it('are read with every field said or none', () => {
		const { job, problems } = readJob({ photographs: [photographOf(one)] });
		expect(problems).toEqual([]);
		expect(job.photographs).toEqual([
			photographOf(one, { shows: '', date: '', kind: 'vehicle', of: '', shopCard: false }),
		]);
		expect(readJob({}).job.photographs).toEqual([]);
	});

	it('say what is wrong with one at its place, and the rest stands', () => {
		const named = { ...photographOf(one), picture: '../../etc' };
		const { job, problems } = readJob({
			photographs: [named, photographOf(other, { of: 'gone' }), photographOf(other)],
			pictures: { ...carried(other), [photographOf(one).picture]: 'AAAA' },
		});
		const said = problems.map((p) => [p.path.join('/'), p.kind]);
		expect(said).toContainEqual(['photographs/0/picture', 'stop']);
		expect(said).toContainEqual([`pictures/${photographOf(one).picture}`, 'stop']);
		expect(said).toContainEqual(['photographs/1/of', 'check']);
		expect(said).toContainEqual(['photographs/2/picture', 'note']);
		expect(said).toHaveLength(4);
		expect(job.photographs).toHaveLength(2);
		expect(Object.keys(job.pictures ?? {})).toEqual([photographOf(other).picture]);
	});

	it('are no more than sixty', () => {
		const many = Array.from({ length: 61 }, (_, i) => photographOf(jpeg(8, 8, i)));
		const { job, problems } = readJob({ photographs: many });
		expect(job.photographs).toHaveLength(60);
		expect(problems.map((p) => p.path.join('/'))).toContain('photographs');
	});
});
