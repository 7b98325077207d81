/**
 * What the air of theatres and of the recovery room holds in a scenario's settled year: of each agent and of nitrous oxide,
 * while a case is given and over the hours of anaesthesia, with the limits that it is held against. An estimate for planning.
 */
import type { CaseUse } from '../case/case-result.ts';
import { vapourPerLiquid } from '../case/liquid-and-vapour.ts';
import type { Period, Standing } from '../fleet/standing.ts';
import type { Agent, CaseRow, EstimateInput, Scenario } from '../input.ts';
import { agents } from '../input.ts';
import type { AirLimit } from '../reference/exposure-limit-terms.ts';
import { airLimits, noAirLimit } from '../reference/exposure-limit-terms.ts';
import { take } from '../reference/reference-set.ts';
import { massConcentration, shareOfLimit } from '../theatre-air/against-limits.ts';
import { escapingGas, givenOffInRecovery, vapourOfLiquid } from '../theatre-air/escaping-gas.ts';
import {
  actingAirChanges,
  buildUp,
  clearance,
  meanConcentration,
  minutesInRoom,
  steadyConcentration
} from '../theatre-air/room-air.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { together } from '../year/consumption.ts';
import type { SourcesOfCases } from './case-sources.ts';
import type { CaseWithShare } from './cases-with-shares.ts';
import { casesWithShares } from './cases-with-shares.ts';
import { leakOfCase } from './leak-of-case.ts';
import type { ScenarioCases } from './scenario-cases.ts';
import type { YearPart } from './year-parts.ts';

export type AirSubject = Agent | 'nitrous-oxide';

/** A limit that holds where the hospital is, and the estimate beside it. */
export interface HeldAgainst {
  readonly terms: AirLimit;
  /** The limit as mass in air, at its own reference temperature. */
  readonly mgPerM3: Quantity;
  /** null: there is no estimate. */
  readonly sharePercent: Quantity | null;
}

export interface RoomAirLine {
  readonly subject: AirSubject;
  /** The case group in which most escapes; null where a cell of the room is empty. */
  readonly row: CaseRow | null;
  /** Escapes into the room, mean of one of its cases; null, as are the concentrations, where a cell is empty. */
  readonly escapingLPerMin: Quantity | null;
  /** While such a case goes on for as long as it takes. */
  readonly steadyPpm: Quantity | null;
  /** When the case ends, from clean air. */
  readonly endOfCasePpm: Quantity | null;
  /** Over all hours of anaesthesia there. */
  readonly meanPpm: Quantity | null;
  readonly heldAgainst: readonly HeldAgainst[];
  /** Said where the chosen place has no limit on record. */
  readonly noLimit: string | null;
  /** Of one case and after it, from clean air. */
  readonly course: readonly { readonly minute: number; readonly ppm: Quantity }[];
}

export interface RoomAir {
  readonly standing: Standing;
  /** Cells without which nothing is told, by their titles; empty where all are given. */
  readonly missing: readonly string[];
  readonly lines: readonly RoomAirLine[];
}

export interface RecoveryAirLine {
  readonly subject: Agent;
  readonly meanPpm: Quantity | null;
  readonly heldAgainst: readonly HeldAgainst[];
  readonly noLimit: string | null;
}

export interface TheatreAir {
  readonly rooms: readonly RoomAir[];
  readonly recovery: { readonly missing: readonly string[]; readonly lines: readonly RecoveryAirLine[] };
}

/** Points of the course of a case, and of the time after it, min. */
const courseMinutes = [1, 2, 3, 5, 10, 15, 20, 30, 45, 60, 90, 120, 180, 240];
const minutesAfter = [1, 2, 3, 5, 10, 15, 20, 30];

export function theatreAir<C extends CaseUse>(
  r: Reckoner,
  input: EstimateInput,
  {
    scenario,
    period,
    cases,
    sources,
    parts
  }: {
    scenario: Scenario;
    period: Period;
    cases: ScenarioCases<C>;
    sources: SourcesOfCases;
    parts: readonly YearPart[];
  }
): TheatreAir {
  const { site, reference } = input;

  const heldAgainst = (subject: AirSubject, mean: Quantity | null, whileGiven: Quantity | null) => {
    if (site.airLimitsOf === null) return { heldAgainst: [], noLimit: null };
    const limits = airLimits(reference, subject, site.airLimitsOf);
    return {
      heldAgainst: limits.map((terms): HeldAgainst => {
        const estimate = terms.averaging === 'working-day' ? mean : whileGiven;
        return {
          terms,
          mgPerM3: limitAsMass(r, input, subject, terms),
          sharePercent:
            estimate === null
              ? null
              : r.apply(shareOfLimit, { ppm: estimate, limitPpm: r.constant(terms.limit) })
        };
      }),
      noLimit: limits.length === 0 ? noAirLimit(site.airLimitsOf, subject) : null
    };
  };

  type Way = CaseWithShare<C>;
  const minutesOf = (row: CaseRow): Quantity => r.cell(row.minutes, 'min', 'caseMix', row.id, 'minutes');
  const minutesAYear = ({ one: { row }, sharePercent }: Way): Quantity =>
    r.apply(minutesInRoom, {
      casesPerYear: r.cell(row.casesPerYear, '1', 'caseMix', row.id, 'casesPerYear'),
      sharePercent,
      minutes: minutesOf(row)
    });

  /** What escapes a minute of each substance that the case is given. */
  const escapesOf = (
    { one }: Way,
    scavengingPercent: Quantity
  ): readonly { readonly subject: AirSubject; readonly escapingLPerMin: Quantity }[] => {
    const { row, agent, result } = one;
    if (row.technique === 'regional') return [];
    const minutes = minutesOf(row);
    const { leakPercent, asVapour } = leakOfCase(r, sources, one);
    const escaping = (spilledL: Quantity) =>
      r.apply(escapingGas, { spilledL, minutes, leakPercent, scavengingPercent });
    return [
      ...(agent === null || asVapour === null
        ? []
        : [{ subject: agent, escapingLPerMin: escaping(asVapour(result.spilledMl)) }]),
      ...(row.nitrousOxidePercent > 0
        ? [{ subject: 'nitrous-oxide' as const, escapingLPerMin: escaping(result.nitrousOxideL) }]
        : [])
    ];
  };

  const subjectsIn = (ways: readonly Way[]): readonly AirSubject[] => {
    const given = new Set<AirSubject>(
      ways.flatMap(({ one: { row, agent } }): AirSubject[] => [
        ...(agent === null ? [] : [agent]),
        ...(row.technique !== 'regional' && row.nitrousOxidePercent > 0 ? (['nitrous-oxide'] as const) : [])
      ])
    );
    return [...agents, 'nitrous-oxide' as const].filter((subject) => given.has(subject));
  };

  const roomOf = (standing: Standing): RoomAir => {
    const { group } = standing;
    const { following, rest } = casesWithShares(r, cases, { scenario, standing });
    const ways = [...following, ...rest];
    const { roomVolumeM3, airChangesPerH: changes, scavengingPercent: scavenging, airMixingPercent } = group;
    if (roomVolumeM3 === null || changes === null || scavenging === null)
      return {
        standing,
        missing: [
          ...(roomVolumeM3 === null ? ['room volume'] : []),
          ...(changes === null ? ['air changes'] : []),
          ...(scavenging === null ? ['scavenging'] : [])
        ],
        lines: subjectsIn(ways).map((subject) => ({
          subject,
          row: null,
          escapingLPerMin: null,
          steadyPpm: null,
          endOfCasePpm: null,
          meanPpm: null,
          ...heldAgainst(subject, null, null),
          course: []
        }))
      };
    const cell = (value: number, unit: string, key: string) =>
      r.cell(value, unit, 'theatreGroups', group.id, key);
    const airChangesPerH = r.apply(actingAirChanges, {
      airChangesPerH: cell(changes, '1/h', 'airChangesPerH'),
      mixingPercent: cell(airMixingPercent, '%', 'airMixingPercent')
    });
    const volume = cell(roomVolumeM3, 'm3', 'roomVolumeM3');
    const scavengingPercent = cell(scavenging, '%', 'scavengingPercent');
    const inRoom = ways.map((way) => ({
      way,
      minutesAYear: minutesAYear(way),
      escapes: escapesOf(way, scavengingPercent).map(({ subject, escapingLPerMin }) => ({
        subject,
        escapingLPerMin,
        steadyPpm: r.apply(steadyConcentration, { escapingLPerMin, airChangesPerH, roomVolumeM3: volume })
      }))
    }));
    return {
      standing,
      missing: [],
      lines: subjectsIn(ways).flatMap((subject): RoomAirLine[] => {
        const given = inRoom.flatMap(({ way, minutesAYear: minutes, escapes }) =>
          escapes.filter((each) => each.subject === subject).map((each) => ({ ...each, way, minutes }))
        );
        const others = inRoom.filter(({ escapes }) => escapes.every((each) => each.subject !== subject));
        const highest = given.reduce((most, each) =>
          r.value(each.steadyPpm) > r.value(most.steadyPpm) ? each : most
        );
        const { steadyPpm, escapingLPerMin } = highest;
        const { row } = highest.way.one;
        const endOfCasePpm = r.apply(buildUp, { steadyPpm, airChangesPerH, minutes: minutesOf(row) });
        const allMinutes = [
          ...given.map(({ minutes }) => minutes),
          ...others.map((other) => other.minutesAYear)
        ];
        const meanPpm = allMinutes.some((minutes) => r.value(minutes) > 0)
          ? r.apply(meanConcentration, {
              steadyPpm: given.map((each) => each.steadyPpm),
              minutes: given.map(({ minutes }) => minutes),
              otherMinutes: others.map((other) => other.minutesAYear)
            })
          : null;
        const at = (minute: number) => r.assumption(minute, 'min', 'A point of the course that is drawn.');
        return [
          {
            subject,
            row,
            escapingLPerMin,
            steadyPpm,
            endOfCasePpm,
            meanPpm,
            ...heldAgainst(subject, meanPpm, steadyPpm),
            course: [
              ...courseMinutes
                .filter((minute) => minute < row.minutes)
                .map((minute) => ({
                  minute,
                  ppm: r.apply(buildUp, { steadyPpm, airChangesPerH, minutes: at(minute) })
                })),
              { minute: row.minutes, ppm: endOfCasePpm },
              ...minutesAfter.map((minute) => ({
                minute: row.minutes + minute,
                ppm: r.apply(clearance, { endPpm: endOfCasePpm, airChangesPerH, minutes: at(minute) })
              }))
            ]
          }
        ];
      })
    };
  };

  const recovery = (): TheatreAir['recovery'] => {
    const {
      recoveryRoomVolumeM3: volume,
      recoveryAirChangesPerH: changes,
      recoveryHoursPerYear: hours
    } = site;
    const given = agents.filter((agent) => parts.some(({ use }) => use.agents[agent] !== undefined));
    if (volume === null || changes === null || hours === null)
      return {
        missing: [
          ...(volume === null ? ['volume'] : []),
          ...(changes === null ? ['air changes'] : []),
          ...(hours === null ? ['hours a year in which it is open'] : [])
        ],
        lines: given.map((subject) => ({ subject, meanPpm: null, ...heldAgainst(subject, null, null) }))
      };
    const cell = (value: number, unit: string, key: string) => r.cell(value, unit, 'site', key);
    return {
      missing: [],
      lines: given.map((subject) => {
        const takenUpMl = together(
          r,
          'mL',
          parts.flatMap(({ use }) => use.agents[subject]?.takenUpMl ?? [])
        );
        const meanPpm = r.apply(steadyConcentration, {
          escapingLPerMin: r.apply(givenOffInRecovery, {
            takenUpL: r.apply(vapourOfLiquid, {
              liquidMl: takenUpMl,
              vapourPerLiquid: vapourOf(r, input, subject)
            }),
            metabolisedPercent: r.constant(take(reference, `${subject}.metabolised`)),
            givenOffPercent: cell(site.recoveryGivenOffPercent, '%', 'recoveryGivenOffPercent'),
            hoursPerYear: cell(hours, 'h', 'recoveryHoursPerYear')
          }),
          airChangesPerH: cell(changes, '1/h', 'recoveryAirChangesPerH'),
          roomVolumeM3: cell(volume, 'm3', 'recoveryRoomVolumeM3')
        });
        return { subject, meanPpm, ...heldAgainst(subject, meanPpm, meanPpm) };
      })
    };
  };

  return { rooms: period.standings.map(roomOf), recovery: recovery() };
}

const vapourOf = (r: Reckoner, { site, reference }: EstimateInput, agent: Agent): Quantity =>
  r.apply(vapourPerLiquid, {
    densityGPerMl: r.constant(take(reference, `${agent}.liquid-density`)),
    gasConstant: r.constant(take(reference, 'gas-constant')),
    temperatureC: r.cell(site.theatreTemperatureC, '°C', 'site', 'theatreTemperatureC'),
    zeroCelsiusK: r.constant(take(reference, 'zero-celsius')),
    molarMassGPerMol: r.constant(take(reference, `${agent}.molar-mass`)),
    pressureKPa: r.cell(site.ambientPressureKPa, 'kPa', 'site', 'ambientPressureKPa')
  });

/** A limit as mass in a volume of air, at the temperature that it refers to. */
export const limitAsMass = (
  r: Reckoner,
  { reference }: Pick<EstimateInput, 'reference'>,
  subject: AirSubject,
  { limit, referenceTemperature }: AirLimit
): Quantity =>
  r.apply(massConcentration, {
    ppm: r.constant(limit),
    molarMassGPerMol: r.constant(take(reference, `${subject}.molar-mass`)),
    pressureKPa: r.constant(take(reference, 'standard-atmosphere')),
    gasConstant: r.constant(take(reference, 'gas-constant')),
    temperatureC: r.constant(referenceTemperature),
    zeroCelsiusK: r.constant(take(reference, 'zero-celsius'))
  });
