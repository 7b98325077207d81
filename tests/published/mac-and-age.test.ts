/**
 * MAC by age: beside nitrous oxide, against the charts of Nickalls RWD, Mapleson WW. Br J Anaesth 2003;91:170-4; in
 * oxygen, against Gold MI et al. Anesthesiology 1993;79:710-4.
 */
import { testArea } from '../fixtures/published-area.ts';

testArea('MAC and age', {
  'mac-1': 0.25,
  'mac-2': 1,
  'mac-3-25': 7.25,
  'mac-3-48': 6,
  'mac-3-75': 5.17
});
