/** Vapour per liquid against the figures in Biro P. Acta Anaesthesiol Scand 2014;58:968-72, doi 10.1111/aas.12374. */
import { testArea } from '../fixtures/published-area.ts';

testArea('liquid to vapour', { 'vap-1': 184, 'vap-2': 195, 'vap-3': 210 });
