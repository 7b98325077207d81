/**
 * The engine at a fixed dial, from the first minute to the last, against the published formula (Dion P. Can J Anaesth
 * 1992;39:633), a figure in Anaesth Intensive Care 1998;26:371-6, and the rule of thumb in Dhulkhed et al. Indian J
 * Anaesth 2013;57:455-63.
 */
import { testArea } from '../fixtures/published-area.ts';

testArea('constant dial', {
  'dial-1': 85,
  'dial-2': (2 * 60 * 200.05) / (2412 * 1.52),
  'dial-3-sevoflurane': 3,
  'dial-3-isoflurane': 3,
  'dial-3-desflurane': 3,
  'dial-3-halothane': 3,
  'dial-3-enflurane': 3
});
