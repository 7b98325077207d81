/** Inspired oxygen at 1 L/min fresh gas: Kim et al. Anesth Pain Med 2020;15(4), doi 10.17085/apm.20055. */
import { testArea } from '../fixtures/published-area.ts';

testArea('oxygen', { 'o2-1': 35.4 });
