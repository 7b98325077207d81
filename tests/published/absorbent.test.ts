/** How long soda lime lasts: Jorgensen B, Jorgensen S. Acta Anaesthesiol Scand 1977;21:437-44. */
import { testArea } from '../fixtures/published-area.ts';

testArea('absorbent', { 'abs-1': 240 });
