import type { IntravenousSupply, RegionalSupply } from '#lib/calc/input.ts';

/**
 * Intravenous and regional anaesthesia before anybody has priced them. The dose is the mean of a published series of
 * adults (7.55 mg/kg/h, SD 1.75, with remifentanil: Struys et al., Eur J Anaesthesiol); the wasted share is from memory,
 * as audits give 20 to 50 %.
 */
export const unpricedTechniques = {
  intravenous: {
    propofolMgPerKgPerH: 7.55,
    propofolWastedPercent: 30,
    propofolPricePerG: '0',
    otherDrugsPerH: '0',
    disposablesPerCase: '0',
    eegSensorPrice: '0',
    eegSensorCasesPercent: 100
  },
  regional: { pricePerCase: '0', kgCo2ePerCase: null }
} as const satisfies { readonly intravenous: IntravenousSupply; readonly regional: RegionalSupply };
