import { box, job, loosePart, panel, shop, stock } from '../../job';
import type { Group } from './entry';
import { readSchema } from './read-schema';

/** The forms of a job, read from its schema: what the file can hold, the screen can edit. */
export const JOB = readSchema(job) as Group;
export const BOX = readSchema(box) as Group;
export const PANEL = readSchema(panel) as Group;
export const PART = readSchema(loosePart) as Group;
export const SHOP = readSchema(shop) as Group;
export const STOCK = readSchema(stock) as Group;
