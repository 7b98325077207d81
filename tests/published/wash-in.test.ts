/**
 * End-tidal over inspired fraction in volunteers: US prescribing information of desflurane; Yasuda N et al.
 * Anesthesiology 1991;74:489-98 and Anesth Analg 1991;72:316-24.
 */
import { testArea } from '../fixtures/published-area.ts';

testArea('wash-in', { 'fafi-1': 0.91, 'fafi-2': 0.74, 'fafi-3': 0.85, 'fafi-4': 0.58 });
