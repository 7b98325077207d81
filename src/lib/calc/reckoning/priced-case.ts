/** What one case costs and emits, beside what it uses. */
import type { CaseUse } from '../case/case-result.ts';
import { co2eLines } from '../emissions/co2e-lines.ts';
import { manufacture } from '../emissions/manufacture.ts';
import type { EstimateInput, Scenario } from '../input.ts';
import type { ConsumablePrices } from '../money/consumable-prices.ts';
import { costOfCase } from '../money/consumables.ts';
import type { Decimal } from '../money/decimal.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { cubicMetres, electricity, hours } from '../year/consumption.ts';
import { propofolOf, techniqueAmounts } from '../year/technique-amounts.ts';
import { captureOf, emissionsOfAbsorbent, massOfNitrousOxide, powerOf } from './amounts.ts';
import type { SourcesOfCases } from './case-sources.ts';
import { atExhaustOf } from './leak-of-case.ts';
import type { CaseReckoning } from './scenario-cases.ts';

export interface PricedCase {
  readonly co2eKg: Quantity;
  /** Of it, by the agent. */
  readonly agentCo2eKg: Quantity;
  readonly cost: Quantity<Decimal>;
}

/** A case of a scenario with its own machine's power and the scenario's capture; what is lost from pipes is no case's. */
export function pricedCase(
  r: Reckoner,
  input: EstimateInput,
  {
    scenario,
    one,
    sources,
    prices
  }: {
    scenario: Scenario;
    one: CaseReckoning<CaseUse>;
    sources: SourcesOfCases;
    prices: ConsumablePrices;
  }
): PricedCase {
  const { row, machine, agent, result } = one;
  const minutes = r.cell(row.minutes, 'min', 'caseMix', row.id, 'minutes');
  const nothing = r.assumption(
    0,
    'min',
    'No breathing system, and no intravenous anaesthesia, in this case.'
  );
  const nitrousOxideKg = massOfNitrousOxide(r, input, result.nitrousOxideL);
  const oxygenM3 = r.apply(cubicMetres, { litres: result.oxygenL });
  const electricityKWh = r.apply(electricity, {
    minutes: row.technique === 'regional' ? nothing : minutes,
    powerW: powerOf(r, input, machine)
  });
  const oneCase = (isOne: boolean): Quantity =>
    r.assumption(isOne ? 1 : 0, '1', isOne ? 'One case.' : 'The case is done by another technique.');
  const isIntravenous = row.technique === 'intravenous';
  const intravenousCases = oneCase(isIntravenous);
  const techniques = {
    intravenousCases,
    intravenousH: r.apply(hours, { minutes: isIntravenous ? minutes : nothing }),
    ...techniqueAmounts(r, input.intravenous, {
      intravenousCases,
      propofolGivenG: isIntravenous
        ? propofolOf(r, input.intravenous, row)
        : r.assumption(0, 'g', 'No propofol for maintenance in this case.')
    }),
    regionalCases: oneCase(row.technique === 'regional')
  };
  const emitting = {
    agents:
      agent === null
        ? []
        : [
            {
              agent,
              liquidMl: result.liquidMl,
              takenUpMl: result.takenUpMl,
              capture: { ...captureOf(r, scenario), atExhaustMl: () => atExhaustOf(r, sources, one) }
            }
          ],
    nitrousOxideKg,
    nitrousOxideLostKg: null,
    oxygenM3,
    absorbents: [
      {
        massKg: result.absorbentKg,
        kgCo2ePerKg: emissionsOfAbsorbent(r, sources.absorbentById(machine.absorbent))
      }
    ],
    electricityKWh,
    intravenousH: techniques.intravenousH,
    regionalCases: techniques.regionalCases,
    // What a machine was made of is no case's.
    made: manufacture(
      r,
      {
        liquidMl: agent === null ? {} : { [agent]: result.liquidMl },
        machines: [],
        generalAnaesthetics: () => oneCase(row.technique !== 'regional')
      },
      input
    )
  };
  const co2eKg = co2eLines(r, emitting, input);
  return {
    co2eKg: co2eKg.total,
    agentCo2eKg: co2eKg.agents,
    cost: costOfCase(r, prices, {
      liquidMl: agent === null ? {} : { [agent]: result.liquidMl },
      oxygenM3,
      airM3: r.apply(cubicMetres, { litres: result.airL }),
      nitrousOxideKg,
      nitrousOxideLostKg: null,
      absorbentKg: { [machine.absorbent]: result.absorbentKg },
      techniques
    })
  };
}
