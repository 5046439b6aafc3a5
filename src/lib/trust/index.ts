export { type TrustChapter, trustChapters, type TrustLine, trustLines } from './trust';
