export { trustChapters, type TrustLine, trustLines } from './trust';
