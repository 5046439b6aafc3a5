import { nth } from '../../measure';
import { type Block, type OnPage, space, broken } from './flow';
import { pageArea, type Paper } from './paper';

/**
 * What is told under one title, before it is on pages. One after another they share pages, unless
 * their paper differs.
 */
export interface Leaf {
	/** Page label and what the title block calls it: 'Sheet 1 of 2'. */
	readonly name: string;
	readonly title: string;
	readonly paper: Paper;
	readonly blocks: readonly Block[];
	/**
	 * Leaves of one chapter stand on one line of the list of pages; its own name when absent.
	 */
	readonly chapter?: string;
	/**
	 * Begins a page, unless the rest of one holds all of it: it is taken to the work by itself.
	 */
	readonly whole?: boolean;
	/** The same told another way: in another order, or drawn smaller; where that spares a page. */
	readonly instead?: () => readonly Block[];
	/** Whether figures on it were rounded to the ruler is known when it is drawn. */
	readonly figures?: { readonly rounded: boolean };
	/** What on it could not be drawn, where something else stands in its place. */
	readonly fault?: string;
}

/** A page, before it knows how many there are. */
export interface SetPage {
	readonly name: string;
	readonly title: string;
	readonly paper: Paper;
	readonly chapters: readonly string[];
	readonly sets: readonly OnPage[];
	readonly rounded: boolean;
	readonly fault?: string;
}

/** Paper between one leaf and the next on a page, mm. */
const BETWEEN = 5;

/** Leaves one after another on as few pages as they take in that order. */
export function setPages(leaves: readonly Leaf[]): SetPage[] {
	return byPaper(leaves).flatMap(onPages);
}

function byPaper(leaves: readonly Leaf[]): Leaf[][] {
	const runs: Leaf[][] = [];
	for (const leaf of leaves) {
		const run = runs.at(-1);
		if (run !== undefined && samePaper(nth(run, 0).paper, leaf.paper)) run.push(leaf);
		else runs.push([leaf]);
	}
	return runs;
}

function samePaper(a: Paper, b: Paper): boolean {
	return a.size === b.size && (a.landscape ?? false) === (b.landscape ?? false);
}

/** Leaves on one kind of paper. */
function onPages(leaves: readonly Leaf[]): SetPage[] {
	const { paper } = nth(leaves, 0);
	const { height } = pageArea(paper);
	const owners: number[] = [];
	const blocks = leaves.flatMap((leaf, i) => {
		const own = [{ ...space(i === 0 ? 0 : BETWEEN), keep: true }, ...leaf.blocks];
		const set = leaf.whole === true ? whole(own, height) : own;
		owners.push(...set.map(() => i));
		return set;
	});
	// Of leaves with nothing on them there is no page.
	const pages = broken(blocks, height).filter((sets) => sets.length > 0);
	const on = pages.map((sets) => [...new Set(sets.map(({ index }) => nth(owners, index)))]);
	const spans = spansOf(on, leaves.length);
	return pages.map((sets, n) => {
		const here = nth(on, n).map((i) => {
			const { from, to } = nth(spans, i);
			return { leaf: nth(leaves, i), of: to - from + 1, place: n - from + 1 };
		});
		return { paper, sets, ...titled(here) };
	});
}

/** From which page to which each leaf goes. */
function spansOf(on: readonly (readonly number[])[], leaves: number) {
	const spans = [...Array(leaves).keys()].map(() => ({ from: Infinity, to: -1 }));
	on.forEach((here, n) => {
		for (const i of here) {
			const span = nth(spans, i);
			span.from = Math.min(span.from, n);
			span.to = n;
		}
	});
	return spans;
}

/** All on one page where one page holds it, else from the top of a page. */
function whole(blocks: readonly Block[], height: number): Block[] {
	const all = blocks.reduce((sum, b) => sum + b.height, 0);
	if (all > height) return blocks.map((b, i) => (i === 0 ? { ...b, fresh: true } : b));
	return blocks.map((b, i) => (i < blocks.length - 1 ? { ...b, keep: true } : b));
}

interface Here {
	readonly leaf: Leaf;
	/** Pages that the leaf takes, and which of them this is. */
	readonly of: number;
	readonly place: number;
}

/** What a page is called by the leaves on it. */
function titled(here: readonly Here[]): Omit<SetPage, 'paper' | 'sets'> {
	const fault = here.find(({ leaf }) => leaf.fault !== undefined)?.leaf.fault;
	const names = here.map(({ leaf, of, place }) =>
		of === 1 ? leaf.name : `${leaf.name} (${place} of ${of})`,
	);
	const titles = here.map(({ leaf, place }) =>
		place === 1 ? leaf.title : `${leaf.title}, continued`,
	);
	return {
		name: names.join(' · '),
		title: titles.join(' · '),
		chapters: here.map(({ leaf }) => leaf.chapter ?? leaf.name),
		rounded: here.some(({ leaf }) => leaf.figures?.rounded === true),
		...(fault === undefined ? {} : { fault }),
	};
}
