/** A fixed dial for two hours: J Clin Anesth 2002;14:267-70; low-flow desflurane in 28 patients (abstract). */
import { testArea } from '../fixtures/published-area.ts';

testArea(
  'dial mode',
  {
    'dialm-1-inspired': 1.45,
    'dialm-1-end-tidal': 1.28,
    'dialm-3-inspired': 4.54,
    'dialm-3-end-tidal': 4.37
  },
  {
    'dialm-1-inspired': 1.723,
    'dialm-1-end-tidal': 1.557,
    'dialm-3-inspired': 5.07,
    'dialm-3-end-tidal': 4.79
  }
);
