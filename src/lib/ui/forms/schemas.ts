import { box, job, loosePart, panel, shop, stock } from '../../job';
import type { Group } from './entry';
import { readSchema, type Schema } from './read-schema';

/** The forms of a job, read from its schema: what the file can hold, the screen can edit. */
const form = (schema: unknown, key: string): Group => readSchema(schema as Schema, key) as Group;

export const JOB = form(job, 'job');
export const BOX = form(box, 'box');
export const PANEL = form(panel, 'panel');
export const PART = form(loosePart, 'part');
export const SHOP = form(shop, 'shop');
export const STOCK = form(stock, 'stock');
