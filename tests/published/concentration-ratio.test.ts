/** End-tidal over fresh gas: Coetzee JF, Stewart LJ. Br J Anaesth 2002;88:46-55, read as an abstract. */
import { testArea } from '../fixtures/published-area.ts';

testArea(
  'concentration ratio',
  { 'ratio-1-0.5': 0.8, 'ratio-1-1': 0.8, 'ratio-1-3': 0.8 },
  { 'ratio-1-0.5': 0.728, 'ratio-1-1': 0.852, 'ratio-1-3': 0.916 }
);
