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
      authors: 'Gibb S et al.',
      title:
        'Prospective observational single-centre study of the capture of sevoflurane in routine practice (its own title carries a brand)',
      locator: 'manuscript of the authors, abstract: 738 cases, 4.9 of 14.2 kg'
    },
    evidence: 'read',
    kind: 'capture-efficiency',
    unusedBecause: 'Shown as a guide beside the scenario’s own capture share, which is an input.',
    guideFor: 'scenarios.capturePercent'
  }),
  constant({
    id: 'capture.desflurane',
    name: 'Capture efficiency at the exhaust, desflurane',
    value: 25,
    printed: '25',
    unit: '%',
    source: article({
      authors: 'Hinterberg et al., as quoted by Gibb S et al.',
      container: 'Anaesthesia',
      year: 2022
    }),
    evidence: 'second-hand',
    kind: 'capture-efficiency',
    unusedBecause: 'Shown as a guide beside the scenario’s own capture share, which is an input.',
    guideFor: 'scenarios.capturePercent'
  })
];
