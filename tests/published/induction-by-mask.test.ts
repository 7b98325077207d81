/** Sevoflurane by mask in children: Paediatr Anaesth 2019;29:304-9; AANA J, June 2020. Neither abstract tells how long it took. */
import { testArea } from '../fixtures/published-area.ts';

testArea(
  'induction by mask',
  { 'ind-1-6': 8.96, 'ind-1-1': 4.17, 'ind-2-1': 9.2, 'ind-2-2': 5.8, 'ind-2-3': 3.8 },
  { 'ind-1-6': 10.33, 'ind-1-1': 2.911, 'ind-2-1': 8.564, 'ind-2-2': 3.603, 'ind-2-3': 1.802 }
);
