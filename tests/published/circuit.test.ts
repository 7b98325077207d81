/** Wash-in of a circuit alone: Miller's Anesthesia, 6th ed., ch. 5. */
import { testArea } from '../fixtures/published-area.ts';

testArea('circuit', { 'circ-1-0.5': 51, 'circ-1-1': 76, 'circ-1-2': 94, 'circ-1-8': 100 });
