export { auditSheets } from './audit';
export { auditOutlines } from './outline';
export { auditRoll } from './roll';
