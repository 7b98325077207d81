import { quoted } from '#lib/workbook/field.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { entryNames } from '../tables/entry-names.ts';
import { importKeyed } from './import-keyed.ts';
import type { ImportPreview, ImportRequest } from './import-request.ts';

/** `previewImport` for the plans that single case groups follow in a scenario, where they are not the scenario's own. */
export function importPlansByCase(workbook: Workbook, request: ImportRequest): ImportPreview {
  const of = {
    scenario: { what: 'scenario', names: entryNames(workbook.scenarios) },
    case: { what: 'case group', names: entryNames(workbook.caseMix) },
    plan: { what: 'flow plan', names: entryNames(workbook.flowPlans) }
  };
  return importKeyed<string>(workbook, request, {
    before: new Map(
      workbook.scenarios.flatMap(({ id, flowPlanByCase }) =>
        Object.entries(flowPlanByCase).map(([caseId, plan]) => [`${id} ${caseId}`, plan] as const)
      )
    ),
    nameOf: (key) => {
      const [scenario = '', caseId = ''] = key.split(' ');
      return `${of.scenario.names.textOf(scenario)}: ${of.case.names.textOf(caseId)}`;
    },
    read: (textOf) => {
      const ids: string[] = [];
      for (const column of ['scenario', 'case', 'plan'] as const) {
        const text = textOf(column);
        const id = of[column].names.idOf(text);
        if (id === undefined)
          return {
            sentence: `${quoted(text)} is the name of no ${of[column].what}, or of more than one: give its id.`
          };
        ids.push(id);
      }
      const [scenario = '', caseId = '', plan = ''] = ids;
      return { key: `${scenario} ${caseId}`, name: `${textOf('scenario')}: ${textOf('case')}`, value: plan };
    },
    isSame: (a, b) => a === b,
    put: (plans) => {
      const byScenario = new Map<string, Record<string, string>>();
      for (const [key, plan] of plans) {
        const [scenario = '', caseId = ''] = key.split(' ');
        byScenario.set(scenario, { ...byScenario.get(scenario), [caseId]: plan });
      }
      return {
        workbook: {
          ...workbook,
          scenarios: workbook.scenarios.map((scenario) => ({
            ...scenario,
            flowPlanByCase: byScenario.get(scenario.id) ?? {}
          }))
        },
        refused: new Map()
      };
    }
  });
}
