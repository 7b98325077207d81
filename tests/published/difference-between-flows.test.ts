/**
 * What one flow uses more than another: French three-group study of liquid injection; Turk Anest Reanim Dern Derg
 * 2008;36:222-9.
 */
import { testArea } from '../fixtures/published-area.ts';

testArea('difference between flows', { 'diff-1': 4.9, 'diff-2': 52 }, { 'diff-1': 6.04 });
