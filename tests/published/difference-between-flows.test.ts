/**
 * What one flow uses more than another: French three-group study of liquid injection; Turk Anest Reanim Dern Derg
 * 2008;36:222-9; Pedersen FM et al. Acta Anaesthesiol Scand 1993;37:509-12.
 */
import { testArea } from '../fixtures/published-area.ts';

testArea(
  'difference between flows',
  { 'diff-1': 4.9, 'diff-2': 52, 'diff-4': 10.6 },
  { 'diff-1': 6.04, 'diff-4': 3.99 }
);
