/**
 * Liquid used in theatre: Turk Anest Reanim Dern Derg 2008;36:222-9; a French study of liquid injection; Setlhare AR et
 * al. J Coll Med S Afr 2025;3(1):a170; the Gloucester series, Anaesth Intensive Care.
 */
import { testArea } from '../fixtures/published-area.ts';

testArea('measured use', {
  'use-1-high': 78,
  'use-1-low': 26,
  'use-2-0.48': 5.85,
  'use-2-2': 10.75,
  'use-2b-0.48': 11.32,
  'use-2b-2': 19.2,
  'use-3': 16.7,
  'use-4': 9.2
});
