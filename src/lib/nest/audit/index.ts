export { auditSheets } from './audit';
export { auditRoll } from './roll';
