export { standsBefore } from './before';
export { isJoined, isTubed, joinedNote, joinedWords, sayJoined } from './joined';
