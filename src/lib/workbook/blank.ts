import { newestReferenceSet } from '#lib/calc/reference/reference-sets.ts';
import { unpricedTechniques } from './unpriced-techniques.ts';
import type { Workbook } from './workbook.ts';
import { workbookFormat, workbookVersion } from './workbook.ts';

/**
 * An empty workbook: no case, one plan, one machine, one scenario, and prices of 0 that wait for the department's own.
 * Physical settings start at common values.
 */
export function blankWorkbook(): Workbook {
  return {
    format: workbookFormat,
    version: workbookVersion,
    referenceSet: newestReferenceSet.id,
    invented: false,
    title: 'Untitled workbook',
    currency: 'EUR',
    priceYear: 2026,
    site: {
      theatreTemperatureC: 20,
      ambientPressureKPa: 101.325,
      monitoringStandard: 'who-wfsa',
      facilityLevel: null,
      electricityPricePerKWh: '0',
      electricityKgCo2ePerKWh: 0,
      departmentFootprintTonnes: null,
      jurisdiction: null,
      lawfulAgentInstead: null,
      lawfulSharePercent: 100,
      electricityMarketKgCo2ePerKWh: null,
      medicalAirKWhPerM3: null,
      consumablesKgCo2ePerCase: null,
      baseYear: null,
      casesKnownBy: null,
      durationsKnownBy: null,
      bottlesKnownBy: null,
      nitrousOxideKnownBy: null,
      electricityKnownBy: null,
      airLimitsOf: null,
      recoveryRoomVolumeM3: null,
      recoveryAirChangesPerH: null,
      recoveryHoursPerYear: null,
      recoveryGivenOffPercent: 100
    },
    accounting: {
      warmingSet: 'AR6',
      warmingHorizonYears: 100,
      customWarming: {},
      discountRatePercent: 3.5,
      appraisalYears: 10,
      paybackLimitYears: 5,
      carbonPricePerTonne: '0',
      agentGrowthPercent: 0,
      serviceGrowthPercent: 0,
      carbonGrowthPercent: 0,
      recoveryMinuteValue: '0',
      bodyModel: 'eger',
      macSet: 'mapleson',
      solubilityGroup: 'of-the-set',
      residualValue: 'none',
      counterfactual: 'machines-last',
      capitalChargePercent: 0,
      taxPercent: 0
    },
    theatreGroups: [
      {
        id: 'main',
        name: 'Theatres',
        theatres: 1,
        machine: 'm-now',
        machineAgeYears: null,
        staffedHoursPerTheatre: null,
        roomVolumeM3: null,
        airChangesPerH: null,
        scavengingPercent: null,
        airMixingPercent: 100,
        scavengingPumpKW: null,
        scavengingPumpHoursPerWeek: null,
        monitors: {}
      }
    ],
    agents: (['sevoflurane', 'isoflurane', 'desflurane'] as const).map((agent) => ({
      agent,
      bottleMl: agent === 'desflurane' ? 240 : 250,
      bottlePrice: '0',
      unusablePercent: 0,
      bottlesBoughtPerYear: null,
      bottlesUsedElsewherePerYear: null,
      scaleToPurchases: false,
      manufactureKgCo2ePerKg: null
    })),
    ...unpricedTechniques,
    gases: { oxygenPerM3: '0', airPerM3: '0', nitrousOxidePerKg: '0', nitrousOxideBoughtKgPerYear: null },
    absorbents: [
      { id: 'soda-lime', name: 'Soda lime', capacityLPerKg: 120, pricePerKg: '0', kgCo2ePerKg: null }
    ],
    caseMix: [],
    flowPlans: [
      {
        id: 'usual',
        name: 'Usual practice',
        phases: [
          {
            name: 'Wash-in',
            minutes: 10,
            flowLPerMin: 6,
            flowAsNeeded: false,
            vaporiser: 'hold',
            dialPercent: null
          },
          {
            name: 'Maintenance',
            minutes: null,
            flowLPerMin: 2,
            flowAsNeeded: false,
            vaporiser: 'hold',
            dialPercent: null
          }
        ]
      }
    ],
    machines: [
      {
        id: 'm-now',
        name: 'Machine in use',
        kind: 'circle',
        circuitVolumeL: null,
        leakMlPerMin: 100,
        sampleMlPerMin: 200,
        sampleReturned: false,
        minimumFlowLPerMin: 0.3,
        canFlowAsNeeded: false,
        spillShareInspiredFraction: null,
        powerW: null,
        unitPrice: '0',
        tradeInPerUnit: '0',
        installationPerUnit: '0',
        servicePerUnitPerYear: '0',
        lifeYears: 10,
        manufactureKgCo2ePerUnit: null,
        absorbent: 'soda-lime',
        monitors: []
      }
    ],
    scenarios: [
      {
        id: 'today',
        name: 'Today',
        baseline: true,
        moves: [],
        plans: { 'm-now': 'usual' },
        spares: 0,
        flowPlanByCase: {},
        agentSwitch: {},
        intravenousPercentByCase: {},
        regionalPercentByCase: {},
        adoptionPercent: 100,
        adoptionFirstYearsPercent: null,
        adoptionWithoutMachinePercent: null,
        capturePercent: 0,
        caughtLostPercent: null,
        caughtBecomes: 'not-known',
        captureDevicePrice: '0',
        captureFeePerYear: '0',
        canisterPrice: '0',
        canisterHoldsG: null,
        scavengingPumpHoursPerWeek: null,
        nitrousOxideSupply: 'as-today',
        nitrousOxideSupplyYear: 0,
        nitrousOxideLossPercent: 2,
        nitrousOxideSupplyCost: '0',
        oneOffCost: '0',
        yearlyExtraCost: '0',
        extraCostLever: 'flow',
        recoveryMinutesSavedPerCase: 0,
        machinesStay: false,
        avoidedPurchases: []
      }
    ],
    monitorPrices: [],
    ranges: {},
    sampling: {
      draws: 10000,
      seed: 20260101,
      shape: 'pert',
      minutesTogether: false,
      overBodyModels: true,
      overModelError: true,
      overSpillShare: true
    },
    overrides: [],
    keptTexts: {}
  };
}
