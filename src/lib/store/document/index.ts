export { likeBefore } from './alike';
export { factIn, fileIn, seedOf, writeFact, writeFile } from './seed';
export { type RegisterEdit, SharedDocument, updatesAsOne } from './shared-document';
export { joined, takeBack } from './take-back';
