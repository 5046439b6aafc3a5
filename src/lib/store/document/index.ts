export { likeBefore } from './alike';
export { byChance } from './places';
export { factIn, fileIn, seedOf, writeFact, writeFile } from './seed';
export { type RegisterEdit, SharedDocument, updatesAsOne } from './shared-document';
export { joined, takeBack } from './take-back';
