/**
 * One-line changes of the wiring that no test once noticed: a wrong figure, and a perfect working for it. Each must turn
 * a test red whose name says the rule. Where the code is written anew, its change is written anew as well.
 */
const rowsOfTheRest = 'rest: rows.flatMap(({ there, rest }) =>';
/** @param {string} others what the cases are given that do not follow */
const rowsOfTheRestWith = (others) =>
  `rest: rows.map(({ rest, ...row }) => ({ ...row, rest: rest === null ? null : ${others} })).flatMap(({ there, rest }) =>`;

/** @type {readonly import('../../scripts/apply-change.mjs').Change[]} */
export const changes = [
  // A scenario's year: the cases that follow it, and those that stay as today.
  {
    rule: 'Cases that do not follow a scenario use what they use today.',
    edits: [[rowsOfTheRest, rowsOfTheRestWith('row.following[0].one')]]
  },
  {
    rule: 'Cases that do not follow a scenario are given today’s agent.',
    edits: [[rowsOfTheRest, rowsOfTheRestWith('{ ...rest, agent: row.following[0].one.agent }')]]
  },
  {
    rule: 'Cases that do not follow a scenario are done with the machine that stands where they are done.',
    edits: [
      [
        'choice(today, row, place.machine, planToday(',
        'choice(today, row, input.machines[0] ?? place.machine, planToday('
      ]
    ]
  },
  {
    rule: 'Where the machine of a scenario has not come, today’s plan is followed.',
    edits: [
      [
        '?? ownEntry(scenario.plans, place.planOf) ??',
        '?? ownEntry(scenario.plans, place.planOf) ?? Object.values(scenario.plans)[0] ??'
      ]
    ]
  },
  {
    rule: 'Machines of today that stay are serviced.',
    edits: [['service: serviceOf(r, serviced)', 'service: serviceOf(r, serviced.slice(0, 1))']]
  },
  {
    rule: 'Machines that come move no more theatres than are left.',
    edits: [['Math.max(0, Math.min(asked, theatres - sum(before)))', 'asked']]
  },
  {
    rule: 'A case group is done where its shares say.',
    edits: [["if (!(own > 0)) return 'none';", '']]
  },
  {
    rule: 'Adoption of the first years is no more than is reached in the end.',
    edits: [['Math.min(ofYear, adoption)', 'ofYear']]
  },
  {
    rule: 'A monitor fills no gap in another theatre group.',
    edits: [['groups.get(one.group.id)', "groups.get('main')"]]
  },
  {
    rule: 'Service that is in the payment is not paid for again.',
    edits: [['payment?.includesService !== true', 'payment?.includesService !== false']]
  },
  {
    rule: 'Machines that move before they would be replaced are not replaced.',
    edits: [['each.arrival.year <= year)', 'each.arrival.year < 0 * year)']]
  },
  {
    rule: 'A spare trades in no machine.',
    edits: [
      ["if (tradedIn !== null) add(year, 'tradeIn', times(tradedIn,", "add(year, 'tradeIn', times(units,"]
    ]
  },
  {
    rule: 'A year costs what the machines cost that stand in it.',
    edits: [['const cost = scenario.costIn(year);', 'const cost = scenario.cost;']]
  },
  {
    rule: 'What a scenario’s year vents, it vents with its own capture.',
    edits: [
      [
        'const agentUses = agentUsesIn(parts, captureOf(r, scenario))',
        'const agentUses = agentUsesIn(parts, captureOf(r, today))'
      ]
    ]
  },
  {
    rule: 'Capture catches no leak.',
    edits: [['(1 - leakPercent / 100) * Math.max(0, liquidMl', 'Math.max(0, liquidMl']]
  },
  {
    rule: 'What leaves by the exhaust is scaled to the purchases as is the spill.',
    edits: [['atExhaustMl + (factor - 1) * unmeasuredMl', 'atExhaustMl']]
  },
  {
    rule: 'What is caught and lost again has filled a canister too.',
    edits: [['for (const each of lostKg) kg += each;', 'for (const each of lostKg) kg += 0 * each;']]
  },
  {
    rule: 'Scavenging pumps run no longer in a scenario than today.',
    edits: [['Math.min(todayH, asked)', 'asked']]
  },
  {
    rule: 'Nitrous oxide lost from the pipes is what is bought less what today uses.',
    edits: [['usedKg: usedTodayKg()', 'usedKg']]
  },
  {
    rule: 'Recovery minutes are saved in the cases that follow alone.',
    edits: [
      [
        'parts.filter(({ follows }) => follows).map(({ use }) => use.generalAnaesthetics)',
        'parts.map(({ use }) => use.generalAnaesthetics)'
      ]
    ]
  },
  {
    rule: 'Today saves no recovery minutes against itself.',
    edits: [
      [
        'scenario === today ? 0 : scenario.recoveryMinutesSavedPerCase',
        'scenario.recoveryMinutesSavedPerCase'
      ]
    ]
  },
  {
    rule: 'What was bought is held against what today uses, and a scenario does not move the ratio.',
    edits: [
      [
        'partsOfToday().flatMap(({ use }) => use.agents[agent] ?? [])',
        'partsOf(input.scenarios.at(-1) ?? today)(fleet.periods(input.scenarios.at(-1) ?? today)[0]).flatMap(({ use }) => use.agents[agent] ?? [])'
      ]
    ]
  },
  {
    rule: 'Regional cases count for no machine hour, electricity or recovery.',
    edits: [['regionalCases.push(casesHere);\n      continue;', 'regionalCases.push(casesHere);']]
  },
  {
    rule: 'Monitors that today lacks as well are not bought for a scenario.',
    edits: [['missingBefore: before.get(monitor.item) ?? null', 'missingBefore: null']]
  },

  // One case by itself.
  {
    rule: 'The emissions of a case have its absorbent in them.',
    edits: [['massKg: result.absorbentKg', 'massKg: nothing']]
  },
  {
    rule: 'The emissions of a case are those with the scenario’s capture.',
    edits: [['...captureOf(r, scenario)', '...captureOf(r, { ...scenario, capturePercent: 0 })']]
  },
  {
    rule: 'A regional case uses no electricity of an anaesthesia machine.',
    edits: [["minutes: row.technique === 'regional' ? nothing : minutes", 'minutes']]
  },

  // What is said of an estimate, and what it is asked.
  {
    rule: 'Purchases are warned of where the estimate is below the low bound or above the high one.',
    edits: [
      [
        'ratio < reconciliationBounds.low || ratio > reconciliationBounds.high',
        'ratio < reconciliationBounds.high || ratio > reconciliationBounds.low'
      ]
    ]
  },
  {
    rule: 'The monitoring of all scenarios lists the strictest level first.',
    edits: [
      [
        '[...byRule.values()].sort((a, b) => levelOrder.indexOf(a.level) - levelOrder.indexOf(b.level))',
        '[...byRule.values()].sort((a, b) => levelOrder.indexOf(b.level) - levelOrder.indexOf(a.level))'
      ]
    ]
  },
  {
    rule: 'The working of a swing names the end of the range that it is of.',
    edits: [["outcome === 0 ? 'low' : 'high'", "outcome === 0 ? 'high' : 'low'"]]
  },
  {
    rule: 'The answer of a break-even question is rounded to the side on which it pays.',
    edits: [['tries < 3 && (of(rounded) < 0', 'tries < 0 && (of(rounded) < 0']]
  },
  {
    rule: 'A rounded answer moves on towards the side on which it pays.',
    edits: [["const step = pays === 'above' ? unit : -unit", "const step = pays === 'above' ? -unit : unit"]]
  },

  // Cases that are kept are told apart by all that they depend on.
  ...['inspiredOxygenPercent', 'pneumoperitoneum'].map((name) => ({
    rule: `A kept case is told apart by ${name}.`,
    edits: withoutName('textBy<CaseRow>(ofRow)', name)
  })),
  ...['circuitVolumeL', 'sampleReturned'].map((name) => ({
    rule: `A kept case is told apart by ${name}.`,
    edits: withoutName('textBy<Machine>(ofMachine)', name)
  })),
  {
    rule: 'A kept case is told apart by capacityLPerKg.',
    edits: withoutName('textBy<Absorbent>(ofAbsorbent)', 'capacityLPerKg')
  },
  {
    rule: 'A kept case is told apart by theatreTemperatureC.',
    edits: withoutName('textBy<Site>(ofSite)', 'theatreTemperatureC')
  },
  {
    rule: 'A kept case is told apart by its reference set.',
    edits: [['`${referenceNumber(reference)}|', '`']]
  },
  {
    rule: 'A kept case is told apart by dialPercent.',
    edits: [
      [
        'textBy<FlowPlan>(ofPlan)',
        '({ phases }: FlowPlan) => JSON.stringify(phases.map((phase) => ({ ...phase, dialPercent: null })))'
      ]
    ]
  },
  {
    rule: 'A kept case is told apart by its agent, in a draw as well.',
    edits: [['|${agent}|', '|']]
  },
  {
    rule: 'A kept case is told apart by the body model.',
    edits: [['|${chosenText(accounting)}', '']]
  },
  {
    rule: 'What is taken up of nitrous oxide leaves less to spill.',
    edits: [['system.oxygen = given.oxygenUptakeLPerMin + (beside.takenUpLPerMin[i] ?? 0);', '']]
  },
  {
    rule: 'What is taken up of nitrous oxide draws gas into the lung.',
    edits: [['system.drawn = beside.drawnInLPerMin[i] ?? 0;', '']]
  },

  // Edits of the document.
  {
    rule: 'A duplicate of today is no second baseline.',
    edits: [["list === 'scenarios' ? { ...copy, baseline: false } : copy", 'copy']]
  },
  {
    rule: 'Ranges of phases go once phases change their places.',
    edits: [
      [
        '...keptOf(workbook, (path) => !moved(path)), flowPlans: workbook.flowPlans.map(',
        'flowPlans: workbook.flowPlans.map('
      ]
    ]
  },
  {
    rule: 'An emptied warming potential of the user’s own is left out of the document.',
    edits: [['|accounting\\.customWarming|', '|']]
  },
  {
    rule: 'The range of a cell that was given none is a fifth either way.',
    edits: [['Math.abs(value) * 0.2', 'Math.abs(value) * 0.1']]
  },
  {
    rule: 'An edit ends what could be done again.',
    edits: [['{ workbook: present }]; this.#future = []; }', '{ workbook: present }]; }']]
  },

  // Data.
  {
    rule: 'A monitoring standard asks for what its list says, and for nothing more.',
    edits: [
      [
        "{ id: 'jsa.pulse-oximetry',",
        "{ id: 'jsa.processed-eeg', item: 'processed-eeg', level: 'recommended', word: 'recommended', " +
          "when: ['intravenous-anaesthesia'], detail: '', evidence: 'second-hand' }, { id: 'jsa.pulse-oximetry',"
      ]
    ]
  },
  {
    rule: 'Machines that were bought at the end of their term are serviced by the department.',
    edits: [
      [
        'return owned !== null && year >= owned ? null : move.terms.payment;',
        'return owned !== null && year >= owned + 100 ? null : move.terms.payment;'
      ]
    ]
  },
  {
    rule: 'Payments for machines that are not bought stand under running cost in the budget.',
    edits: [['addUp([payments, saving.negated()])', 'addUp([saving.negated()])']]
  },
  {
    rule: 'A capital charge is on what is not written off on average over the year.',
    edits: [['before.minus(writtenOff.div(2)).times(', 'before.times(']]
  },
  {
    rule: 'Where the supply of nitrous oxide has changed, its own share is lost and no longer today’s.',
    edits: [
      [
        "supply !== 'as-today' && period.fromYear > scenario.nitrousOxideSupplyYear;",
        "supply !== 'as-today' && period.fromYear < scenario.nitrousOxideSupplyYear;"
      ]
    ]
  },
  {
    rule: 'Only of the cases that follow does a share change its technique.',
    edits: [['(sharePercent * techniquePercent) / 100', 'techniquePercent']]
  },
  {
    rule: 'Cases that become intravenous are given no agent.',
    edits: [
      ['kept((row: CaseRow): CaseRow => ({ ...row, technique }))', 'kept((row: CaseRow): CaseRow => row)']
    ]
  },
  {
    rule: 'Propofol that is drawn up and not given is paid for.',
    edits: [['givenG / (1 - wastedPercent / 100)', 'givenG']]
  },
  {
    rule: 'The technique is a lever of its own.',
    edits: [["technique: ['intravenousPercentByCase', 'regionalPercentByCase'],", 'technique: [],']]
  }
];

/**
 * @param {string} list that makes a text of an entry
 * @param {string} name left out of it
 * @returns {[string, string][]}
 */
function withoutName(list, name) {
  return [[list, list.replace(')', `.filter((each) => each !== '${name}'))`)]];
}
