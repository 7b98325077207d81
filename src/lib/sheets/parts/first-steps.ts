/** What has to be filled in before there is anything to compare, in the order in which it is best done. */
import type { Workbook } from '#lib/workbook/workbook.ts';

export interface FirstStep {
  readonly route: string;
  readonly sheet: string;
  readonly words: string;
  readonly done: boolean;
}

const isPriced = (price: string): boolean => Number(price) > 0;

/** The steps from an empty workbook to an answer; each is done once the least that it asks for is there. */
export function firstSteps({
  caseMix,
  agents,
  flowPlans,
  machines,
  scenarios,
  theatreGroups
}: Workbook): FirstStep[] {
  return [
    {
      route: '/theatres/',
      sheet: 'Theatres',
      words: 'how many theatres there are',
      // One theatre is what a workbook starts with: whoever goes on to the cases has left it so.
      done: theatreGroups.length > 1 || (theatreGroups[0]?.theatres ?? 1) > 1 || hasCases({ caseMix })
    },
    {
      route: '/case-mix/',
      sheet: 'Case mix',
      words: 'the case groups of a year, with cases and minutes',
      done: hasCases({ caseMix })
    },
    {
      route: '/prices/',
      sheet: 'Prices',
      words: 'what a bottle of each agent costs, and gases, absorbent and electricity',
      done: agents.some(({ bottlePrice }) => isPriced(bottlePrice))
    },
    {
      route: '/flow-plans/',
      sheet: 'Flow plans',
      words: 'how the flow is set today, and a plan beside it',
      done: flowPlans.length > 1
    },
    {
      route: '/machines/',
      sheet: 'Machines',
      words: 'the machine in use, and one that could be bought',
      done: machines.length > 1
    },
    {
      route: '/scenarios/',
      sheet: 'Scenarios',
      words: 'what could take today’s place',
      done: hasAlternative({ scenarios })
    }
  ];
}

/** Whether any case is done in the year: without one every figure of a year is 0. */
export const hasCases = ({ caseMix }: Pick<Workbook, 'caseMix'>): boolean =>
  caseMix.some(({ casesPerYear }) => casesPerYear > 0);

/** Whether there is something to hold against today. */
export const hasAlternative = ({ scenarios }: Pick<Workbook, 'scenarios'>): boolean => scenarios.length > 1;
