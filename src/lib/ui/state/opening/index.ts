export { type DeskOpening, openingOfRecord } from './desk-opening';
export { type Documents, fetchDocuments } from './documents';
export { firstJob, firstOfShop, newEmpty, newFromSample, newId } from './first-job';
export { OpenedJob } from './opened-job';
