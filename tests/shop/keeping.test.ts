import { execFileSync } from 'node:child_process';
import {
	appendFileSync,
	mkdtempSync,
	readdirSync,
	readFileSync,
	rmSync,
	truncateSync,
	writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fc, test } from '@fast-check/vitest';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { SharedDocument } from '../../src/lib/store/document/shared-document';
import { ShopDocuments } from '../../src/shop/documents';
import { FolderLogs } from '../../src/shop/folder-logs';
import { Links } from '../../src/shop/links';
import { openFolder } from '../../src/shop/shop-folder';
import { NO_MARK } from '../../src/shop/keeping';
import { readLog, UpdateLog } from '../../src/shop/update-log';
import { valueIn } from '../../src/shop/whole-file';
import { runs } from '../depth';
import { RACK } from './shop';

let folder: string;
beforeEach(() => (folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-folder-'))));
afterEach(() => rmSync(folder, { recursive: true, force: true }));
const bytes = (...values: number[]): Uint8Array => Uint8Array.from(values);

describe('the file of a document', () => {
	it('holds what was added, in order, also after it was made one', async () => {
		const path = join(folder, 'a.log');
		const { log, contents } = await UpdateLog.open(path);
		expect(contents.entries).toEqual([]);
		const first = await log.append(bytes(1, 2), 5);
		const second = await Promise.all([log.append(bytes(3), 6), log.append(bytes(), 7)]);
		expect(new Set([NO_MARK, first.mark, ...second.map(({ mark }) => mark)]).size).toBe(4);
		expect((await readLog(path)).entries).toEqual([first, ...second]);
		const making = log.compact(() => bytes(9, 9));
		const later = await log.append(bytes(4), 8); // comes while it is made
		await making;
		await log.close();
		const one = { mark: second[1].mark, at: 7, bytes: bytes(9, 9) };
		expect((await readLog(path)).entries).toEqual([one, later]);
	});

	test.prop(
		[fc.array(fc.uint8Array({ maxLength: 30 }), { minLength: 1, maxLength: 8 }), fc.nat()],
		{
			numRuns: runs(120),
		},
	)('torn anywhere holds all that is whole before, and goes on', async (all, n) => {
		const path = join(folder, `torn-${Math.random()}.log`);
		const { log } = await UpdateLog.open(path);
		for (const one of all) await log.append(one, 1);
		await log.close();
		const whole = await readLog(path);
		const cut = n % (whole.size + 1);
		truncateSync(path, cut);
		const left = await readLog(path);
		expect(left.size).toBeLessThanOrEqual(cut);
		expect(left.entries).toEqual(whole.entries.slice(0, left.entries.length));
		const again = await UpdateLog.open(path);
		const more = await again.log.append(bytes(7), 2);
		await again.log.close();
		expect((await readLog(path)).entries).toEqual([...left.entries, more]);
	});

	it('with something else at its end keeps that beside it', async () => {
		const path = join(folder, 'a.log');
		const { log } = await UpdateLog.open(path);
		await log.append(bytes(1), 1);
		await log.close();
		appendFileSync(path, 'not ours');
		const again = await UpdateLog.open(path);
		await again.log.close();
		expect((await readLog(path)).torn.length).toBe(0);
		const beside = readdirSync(folder).find((name) => name.includes('torn')) ?? '';
		expect(readFileSync(join(folder, beside), 'utf8')).toBe('not ours');
	});
});

describe('the documents of a shop', () => {
	/** Updates of one writer, a register each. */
	function typed(count: number): { doc: SharedDocument; updates: Uint8Array[] } {
		const doc = new SharedDocument();
		const updates: Uint8Array[] = [];
		doc.onUpdate((update) => updates.push(update));
		for (let n = 0; n < count; n++) doc.put('map', `key ${n % 3}`, `=${n}`);
		return { doc, updates };
	}

	it('are as they were after a long day and a new start, in a file that has not grown', async () => {
		const { doc, updates } = typed(900);
		const first = await ShopDocuments.in(new FolderLogs(folder));
		await first.use('job a');
		for (const update of updates)
			expect(await first.add('job a', update)).toMatchObject({ kept: true, isNew: true });
		const twice = await first.add('job a', updates[5]!);
		expect(twice).toMatchObject({ kept: true, isNew: false });
		const before = first.list();
		await first.leave('job a');
		expect(first.inMemory).toBe(0);
		const later = await ShopDocuments.in(new FolderLogs(folder));
		expect(later.list()).toEqual(before);
		const found = await later.use('job a');
		expect(found!.lacking(doc.standing())).toBeNull();
		expect(doc.lacking(found!.standing())).toBeNull();
		expect(found!.register('map', 'key 2')).toBe('=899');
		await later.close();
		expect((await readLog(join(folder, 'job_a.log'))).entries).toHaveLength(1);
	});

	it('taken into use while they are being let go of lose nothing', async () => {
		const { updates } = typed(60);
		const documents = await ShopDocuments.in(new FolderLogs(folder));
		for (const update of updates) {
			await documents.use('job a');
			const adding = documents.add('job a', update);
			const leaving = documents.leave('job a');
			const found = await documents.use('job a');
			expect(await adding).toMatchObject({ kept: true });
			await documents.leave('job a');
			await leaving;
			expect(found).not.toBeNull();
		}
		const found = await documents.use('job a');
		for (const update of updates) expect(found!.holds(update)).toBe(true);
		await documents.close();
	});

	it('are not touched by bytes that are no update', async () => {
		const documents = await ShopDocuments.in(new FolderLogs(folder));
		await documents.use('job a');
		expect(await documents.add('job a', bytes(9, 9, 9, 9))).toMatchObject({
			...{ kept: false, why: 'unreadable' },
		});
		expect(documents.list()).toEqual([]);
		await documents.close();
	});
});

describe('the folder of a shop', () => {
	it('is one process at a time, and free again once that has gone', async () => {
		const first = await openFolder(folder, RACK);
		await expect(openFolder(folder, RACK)).rejects.toThrow(/works in .*--folder/);
		await first.close();
		const gone = Number(
			execFileSync(process.execPath, ['-p', 'process.pid'], { encoding: 'utf8' }),
		);
		writeFileSync(join(folder, 'in-use'), String(gone));
		const again = await openFolder(folder, RACK);
		expect(again.id).toBe(first.id);
		await again.close();
	});

	it('of a newer planner is left alone', async () => {
		await (await openFolder(folder, RACK)).close();
		const about = join(folder, 'shop.json');
		const kept = JSON.parse(readFileSync(about, 'utf8')) as object;
		writeFileSync(about, JSON.stringify({ ...kept, job: 99 }));
		await expect(openFolder(folder, RACK)).rejects.toThrow('newer planner');
		expect(JSON.parse(readFileSync(about, 'utf8'))).toMatchObject({ job: 99 });
	});

	it('that cannot be one is refused in words', async () => {
		writeFileSync(join(folder, 'a file'), '');
		await expect(openFolder(join(folder, 'a file'), RACK)).rejects.toThrow(
			/cannot be kept in .*a file.*--folder/,
		);
	});

	it.each(['links.json', 'shop.json'])('with a torn %s lets nobody in', async (name) => {
		await (await openFolder(folder, RACK)).close();
		writeFileSync(join(folder, name), '{"torn": ');
		await expect(openFolder(folder, RACK)).rejects.toThrow('cannot be kept');
	});

	it('never holds a secret, and knows it again', async () => {
		const links = await Links.in(valueIn(join(folder, 'links.json')));
		const secret = (await links.make('Saw', 'work')) ?? '';
		expect(secret.length).toBeGreaterThan(20);
		expect(readFileSync(join(folder, 'links.json'), 'utf8')).not.toContain(secret);
		const later = await Links.in(valueIn(join(folder, 'links.json')));
		expect(later.of(secret)).toMatchObject({ name: 'Saw', right: 'work' });
		expect(later.of(`${secret}x`)).toBeNull();
		expect(later.of(undefined)).toBeNull();
	});
});
