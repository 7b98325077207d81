/**
 * Closed-circuit uptake: Pal SK et al. Br J Anaesth 2001;86:645-9; closed-circle desflurane in 30 adults, probably
 * Anaesthesia 1996;51:33-6; De Cooman S et al. BMC Res Notes 2014;7:469; Lowe and Ernst 1981; a series in the Chinese
 * Journal of Clinical Anesthesiology.
 */
import { testArea } from '../fixtures/published-area.ts';

testArea(
  'uptake',
  {
    'up-1': 4.02,
    'up-2-30-min': 10.1,
    'up-2-60-min': 14.8,
    'up-2-120-min': 25.4,
    'up-2-180-min': 35.8,
    'up-3': 4.63,
    'up-4-sevoflurane': 5,
    'up-4-isoflurane': 6.5,
    'up-4-desflurane': 10.2,
    'up-5-sevoflurane': 6.5,
    'up-5-sevoflurane-2': 7.2,
    'up-5-desflurane': 3.1,
    'up-5-desflurane-2': 3.1,
    'up-7-first-hour': 6.92,
    'up-7-second-hour': 4.57
  },
  { 'up-7-first-hour': 4.44, 'up-7-second-hour': 2.12, 'up-5-sevoflurane-2': 4.16 }
);
