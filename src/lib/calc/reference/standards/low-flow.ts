import type { MonitoringDocument } from './monitoring-rule.ts';

/** What papers hold essential once the fresh gas flow is 1 L/min or less. */
export const lowFlow: MonitoringDocument = {
  id: 'low-flow',
  name: 'Low-flow literature',
  layer: 'low-flow',
  source: {
    title:
      'Brief review of minimal fresh gas flow, which quotes Baum and Aitkenhead 1995 on monitoring; other clinical reviews (not noted which)',
    container: 'Can J Anesth',
    locator: 'requirements for monitoring',
    doi: '10.1007/s12630-012-9736-2'
  },
  limits: 'From papers, not from a standard: shown apart from what the chosen standard asks.',
  rules: [
    {
      id: 'low-flow.inspired-oxygen',
      item: 'inspired-oxygen',
      level: 'required',
      word: 'essential',
      when: ['breathing-system', 'flow-up-to-1'],
      detail: 'Inspired and expired; reviews set the low alarm near 28 to 30 %.',
      evidence: 'read'
    },
    {
      id: 'low-flow.agent-concentration',
      item: 'agent-concentration',
      level: 'required',
      word: 'essential',
      when: ['breathing-system', 'volatile-agent', 'flow-up-to-1'],
      detail: 'Inspired and expired, once the flow is lowered.',
      evidence: 'read'
    },
    {
      id: 'low-flow.capnography',
      item: 'capnography',
      level: 'required',
      word: 'essential',
      when: ['breathing-system', 'flow-up-to-1'],
      detail: 'Inspired CO2 decides when the absorbent is changed, not its colour.',
      evidence: 'read'
    },
    {
      id: 'low-flow.leak-test',
      item: 'leak-test',
      level: 'recommended',
      word: 'recommended',
      when: ['breathing-system', 'flow-up-to-1'],
      detail: 'Before each case: leaks of 100 mL/min matter at low flow.',
      evidence: 'second-hand'
    },
    {
      id: 'low-flow.absorbent-check',
      item: 'absorbent-check',
      level: 'recommended',
      word: 'recommended',
      when: ['breathing-system', 'flow-up-to-1'],
      detail: 'Fresh and moist; one without strong base is preferred.',
      evidence: 'second-hand'
    }
  ]
};
