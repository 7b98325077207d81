/** Where a gas goes in a patient and a machine: the lung and the tissues that hold it, the circuit that it fills. */
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { CaseConstants, CompartmentConstants } from './case-constants.ts';
import type { CaseGiven } from './conditions.ts';
import { childOrAdult } from './child-or-adult.ts';
import { fatVolume, obesePatient, residualInObesity } from './obesity.ts';
import type { ObesePatient } from './obesity.ts';
import {
  adultResidualCapacity,
  childResidualCapacity,
  lungVolume,
  lungVolumeOf,
  residualBetween,
  tissueVolume
} from './physiology.ts';

export interface TissueModel {
  readonly volumeL: Quantity;
  readonly sharePercent: Quantity;
  readonly tissueBlood: Quantity;
}

/** The tissues of a body model in this patient, and the lung as a volume of this gas. */
export function gasInBody(
  r: Reckoner,
  constants: CaseConstants,
  {
    weightKg,
    bloodGas,
    body
  }: {
    readonly weightKg: Quantity;
    readonly bloodGas: Quantity;
    readonly body: readonly CompartmentConstants[];
  }
): { readonly tissues: readonly TissueModel[]; readonly lungVolumeL: Quantity } {
  const standardKg = r.constant(constants.standardWeight);
  const obese = constants.obesity === null ? null : obesePatient(r, constants.obesity, weightKg);
  const fatVolumesL =
    obese === null ? [] : body.filter(({ isFat }) => isFat).map(({ volume }) => r.constant(volume));
  const tissues = body.map(({ volume, share, tissueBlood, isFat }) => ({
    volumeL:
      obese !== null && isFat
        ? r.apply(fatVolume, {
            volumeL: r.constant(volume),
            fatVolumesL,
            limitKg: obese.limitKg,
            standardKg,
            weightKg,
            leanKg: obese.leanKg,
            leanAtLimitKg: obese.leanAtLimitKg
          })
        : r.apply(tissueVolume, {
            volumeL: r.constant(volume),
            weightKg: obese === null ? weightKg : obese.leanScaleKg,
            standardKg
          }),
    sharePercent: r.constant(share),
    tissueBlood: r.constant(tissueBlood)
  }));
  const residualMl = residualOf(r, constants, weightKg, obese);
  const lungTissue = {
    tissueL: r.constant(constants.lungTissue),
    bloodGas,
    weightKg: obese === null ? weightKg : obese.leanScaleKg,
    standardKg
  };
  return {
    tissues,
    lungVolumeL:
      residualMl === null
        ? r.apply(lungVolume, { residualL: r.constant(constants.residualCapacity), ...lungTissue })
        : r.apply(lungVolumeOf, { residualMl, ...lungTissue })
  };
}

/** Gas volume of the lung where it does not simply scale with weight: in children and in obesity, mL; else null. */
function residualOf(
  r: Reckoner,
  constants: CaseConstants,
  weightKg: Quantity,
  obese: ObesePatient | null
): Quantity | null {
  const { childResidualCapacity: ofChild, adultWeightLimit, residualCapacity } = constants;
  const residualL = r.constant(residualCapacity);
  const standardKg = r.constant(constants.standardWeight);
  if (obese !== null)
    return r.apply(residualInObesity, {
      residualL,
      limitKg: obese.limitKg,
      standardKg,
      sharePercent: obese.residualSharePercent,
      weightKg,
      heightM: obese.heightM,
      bodyMassIndex: obese.bodyMassIndex
    });
  if (ofChild === null || adultWeightLimit === null || r.value(weightKg) >= adultWeightLimit.value)
    return null;
  return childOrAdult(r, {
    constants,
    weightKg,
    between: residualBetween,
    child: (kg) => r.apply(childResidualCapacity, { perKgMl: r.constant(ofChild), weightKg: kg }),
    adult: (kg) => r.apply(adultResidualCapacity, { residualL, weightKg: kg, standardKg })
  });
}

/** The volume of the circuit, and the share of what it spills that leaves as inspired gas. */
export function circuitOf(
  r: Reckoner,
  { conditions, cells }: CaseGiven,
  constants: CaseConstants
): { readonly circuitVolumeL: Quantity; readonly spillShareInspired: Quantity } {
  return {
    circuitVolumeL:
      conditions.circuitVolumeL === null
        ? r.fallback(constants.circuitVolume, 'machines', cells.machine, 'circuitVolumeL')
        : r.cell(conditions.circuitVolumeL, 'L', 'machines', cells.machine, 'circuitVolumeL'),
    spillShareInspired:
      conditions.spillShareInspiredFraction === null
        ? r.assumption(1, '1', 'Gas mixes in the circuit before it is spilled.')
        : r.cell(
            conditions.spillShareInspiredFraction,
            '1',
            'machines',
            cells.machine,
            'spillShareInspiredFraction'
          )
  };
}
