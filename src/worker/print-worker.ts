import { offer } from './offer';
import type { Printer } from '../lib/ui/planning/planner';
import { paper } from './paper';

const printer: Printer = { paper };
offer(printer);
