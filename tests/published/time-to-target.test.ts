/**
 * Minutes to one MAC and end-tidal courses at low flow: Horwitz M, Jakobsson JG. Minerva Anestesiol 2016;82:180-5;
 * Lerou JGC, Verheijen R, Booij LHDJ. Br J Anaesth 2002;88:24-37.
 */
import { testArea } from '../fixtures/published-area.ts';

testArea(
  'time to target',
  {
    'time-1-0.5': 15.2,
    'time-1-1': 6.2,
    'time-2-0.5': 8.5,
    'time-2-1': 3.7,
    'time-3-mean': 0.95,
    'time-3-peak': 0.96
  },
  { 'time-2-1': 5.8, 'time-3-peak': 0.822 }
);
