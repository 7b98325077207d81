/** How much of the vented agent a capture device at the exhaust gets back. */
import { constant } from './constant.ts';
import { article } from './sources.ts';

export const captureConstants = [
  constant({
    id: 'capture.sevoflurane',
    name: 'Capture efficiency at the exhaust, sevoflurane',
    value: 34,
    printed: '34 (21 in long, 48 in short cases)',
    unit: '%',
    conditions: '738 cases',
    source: {
      authors: 'Gibb et al.',
      title: 'Prospective single-centre study of capture (citation not noted)',
      locator: '738 cases'
    },
    evidence: 'read',
    kind: 'capture-efficiency',
    unusedBecause: 'Offered as a guide beside the scenario’s own capture share, which is an input.'
  }),
  constant({
    id: 'capture.desflurane',
    name: 'Capture efficiency at the exhaust, desflurane',
    value: 25,
    printed: '25',
    unit: '%',
    source: article({ authors: 'Hinterberg et al.', container: 'Anaesthesia', year: 2022 }),
    evidence: 'second-hand',
    kind: 'capture-efficiency',
    unusedBecause: 'Offered as a guide beside the scenario’s own capture share, which is an input.'
  })
];
