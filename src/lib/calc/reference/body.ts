/** The compartments of the three body models, all for an adult of 70 kg. */
import { constant } from './constant.ts';
import type { Source } from './constant.ts';
import { bodySizeConstants } from './body-size.ts';
import { derivedConstant } from './derived-constant.ts';
import { organConstants } from './organs.ts';
import { eger1974, levitt2007 } from './sources.ts';

const words: Readonly<Record<string, string>> = {
  'vessel-rich': 'vessel-rich group',
  muscle: 'muscle group',
  fat: 'fat group',
  'fat-well-perfused': 'well perfused fat',
  'fat-poorly-perfused': 'poorly perfused fat'
};

const volumeUnit = { unit: 'L', kind: 'compartment-volume' };
const shareUnit = { unit: '%', kind: 'compartment-share' };

const eger = [
  { group: 'vessel-rich', volumeL: 6, sharePercent: 75 },
  { group: 'muscle', volumeL: 33, sharePercent: 18 },
  { group: 'fat', volumeL: 14.5, sharePercent: 5.5 }
].flatMap(({ group, volumeL, sharePercent }) => [
  constant({
    id: `body.eger.${group}.volume`,
    name: `Volume of the ${words[group]}, Eger's adult`,
    value: volumeL,
    printed: String(volumeL),
    conditions: '70 kg adult; scales with weight / 70',
    source: eger1974,
    evidence: 'memory',
    ...volumeUnit
  }),
  constant({
    id: `body.eger.${group}.share`,
    name: `Share of cardiac output to the ${words[group]}, Eger's adult`,
    value: sharePercent,
    printed: String(sharePercent),
    conditions: '70 kg adult',
    source: eger1974,
    evidence: 'memory',
    ...shareUnit
  })
]);

const perfusion = [
  { id: 'fat-perfusion.well-perfused', name: 'Perfusion of well perfused fat', value: 0.074 },
  { id: 'fat-perfusion.poorly-perfused', name: 'Perfusion of poorly perfused fat', value: 0.014 }
].map(({ id, name, value }) =>
  constant({
    id,
    name,
    value,
    printed: String(value),
    unit: 'L/kg/min',
    conditions: 'needed to describe six days of volatile-agent data',
    source: levitt2007,
    evidence: 'read',
    kind: 'fat-perfusion'
  })
);

const organSums: Source = {
  title: 'Summed from the organ volumes and blood flows of this reference set',
  locator: 'records organ.*'
};
const twoFatSource: Source = {
  title: 'Reference adult with its fat split in two, from records of this reference set',
  locator: 'records body.reference-adult.*, fat-perfusion.*, body.cardiac-output.coefficient'
};

const parents = [...organConstants, ...bodySizeConstants, ...perfusion];

const referenceAdult = [
  {
    group: 'vessel-rich',
    volume: '4.98',
    share: '66.4',
    organs: 'brain, gut, heart, kidney, liver, spleen, thyroid'
  },
  { group: 'muscle', volume: '29.2', share: '18.8', organs: 'muscle and skin' },
  { group: 'fat', volume: '14.6', share: '4.6', organs: 'adipose tissue' }
].flatMap(({ group, volume, share, organs }) => [
  derivedConstant(
    {
      id: `body.reference-adult.${group}.volume`,
      name: `Volume of the ${words[group]}, reference adult`,
      printed: volume,
      conditions: `70 kg adult; ${organs}; scales with weight / 70`,
      source: organSums,
      ...volumeUnit
    },
    parents
  ),
  derivedConstant(
    {
      id: `body.reference-adult.${group}.share`,
      name: `Share of cardiac output to the ${words[group]}, reference adult`,
      printed: share,
      conditions: `70 kg adult; ${organs}`,
      source: organSums,
      ...shareUnit
    },
    parents
  )
]);

const halves = 'the two halves have equal masses, an assumption from memory';
const litreIsKilogram = 'one litre of fat counted as one kilogram';

const twoFat = [
  { group: 'vessel-rich', volume: '4.98', share: '66.4', volumeNote: '', shareNote: '' },
  { group: 'muscle', volume: '29.2', share: '18.8', volumeNote: '', shareNote: '' },
  {
    group: 'fat-well-perfused',
    volume: '7.3',
    share: '11.2',
    volumeNote: `; ${halves}`,
    shareNote: `; ${litreIsKilogram}`
  },
  {
    group: 'fat-poorly-perfused',
    volume: '7.3',
    share: '2.1',
    volumeNote: `; ${halves}`,
    shareNote: `; ${litreIsKilogram}`
  }
].flatMap(({ group, volume, share, volumeNote, shareNote }) => {
  const volumeRecord = derivedConstant(
    {
      id: `body.two-fat.${group}.volume`,
      name: `Volume of the ${words[group]}, adult with two fat compartments`,
      printed: volume,
      conditions: `70 kg adult; scales with weight / 70${volumeNote}`,
      source: twoFatSource,
      ...volumeUnit
    },
    [...parents, ...referenceAdult]
  );
  const shareRecord = derivedConstant(
    {
      id: `body.two-fat.${group}.share`,
      name: `Share of cardiac output to the ${words[group]}, adult with two fat compartments`,
      printed: share,
      conditions: `70 kg adult${shareNote}`,
      source: twoFatSource,
      ...shareUnit
    },
    [...parents, ...referenceAdult, volumeRecord]
  );
  return [volumeRecord, shareRecord];
});

export const bodyConstants = [
  ...bodySizeConstants,
  ...organConstants,
  ...eger,
  ...referenceAdult,
  ...perfusion,
  ...twoFat
];
