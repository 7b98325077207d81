/** The sheets, in the order of the argument. */
export interface SheetEntry {
  readonly route: string;
  readonly title: string;
  /** What the sheet is for, in one sentence. */
  readonly words: string;
}

export interface SheetGroup {
  readonly title: string;
  readonly sheets: readonly SheetEntry[];
}

export const sheetGroups: readonly SheetGroup[] = [
  {
    title: 'What we do today',
    sheets: [
      {
        route: '/theatres/',
        title: 'Theatres',
        words: 'How many theatres there are, which machine stands in them today, and which monitors.'
      },
      {
        route: '/case-mix/',
        title: 'Case mix',
        words: 'What is done in a year: groups of alike anaesthetics, never single patients.'
      },
      {
        route: '/flow-plans/',
        title: 'Flow plans',
        words: 'How the fresh gas flow is set through a case, today and in the plans under discussion.'
      },
      {
        route: '/prices/',
        title: 'Prices',
        words: 'What agents, gases, drugs, absorbent and electricity cost.'
      },
      {
        route: '/machines/',
        title: 'Machines',
        words: 'The machines in use and the ones that could come in their place.'
      }
    ]
  },
  {
    title: 'What we could do',
    sheets: [
      {
        route: '/scenarios/',
        title: 'Scenarios',
        words: 'Today, and what could take its place: a machine, a flow plan, and how far it is taken up.'
      },
      {
        route: '/comparison/',
        title: 'Comparison',
        words: 'A year of each scenario side by side: agent, money and emissions.'
      },
      {
        route: '/emissions/',
        title: 'Emissions',
        words: 'The same year by every way to count warming, and what each line of it rests on.'
      },
      {
        route: '/payback/',
        title: 'Payback',
        words: 'When a scenario has paid for itself, and what would have to change for it to do so.'
      },
      {
        route: '/uncertainty/',
        title: 'Uncertainty',
        words: 'How sure the answer is, and which figure it hangs on.'
      }
    ]
  },
  {
    title: 'What it takes',
    sheets: [
      {
        route: '/monitoring/',
        title: 'Monitoring',
        words: 'What the chosen standard asks for with these cases and flows, and what the theatres lack.'
      },
      {
        route: '/theatre-air/',
        title: 'Theatre air',
        words: 'What escapes into the air of theatres and recovery, beside the limits that are on record.'
      },
      {
        route: '/evidence/',
        title: 'Evidence',
        words: 'Where every published figure comes from, and how the model stands against measurements.'
      },
      {
        route: '/report/',
        title: 'Report',
        words: 'One page for the meeting, and behind it all that it rests on.'
      }
    ]
  }
];

/** The entry of a route. */
export function sheetAt(route: string): SheetEntry {
  const found = sheetGroups.flatMap((group) => group.sheets).find((sheet) => sheet.route === route);
  if (found === undefined) throw new Error(`There is no sheet at ${route}.`);
  return found;
}

/** The sheet on which a cell of the workbook stands. */
export function routeOfCell(path: string): string {
  switch (path.split('.')[0]) {
    case 'caseMix':
      return /^caseMix\.[^.]+\.theatreGroups\./.test(path) ? '/theatres/' : '/case-mix/';
    case 'flowPlans':
      return '/flow-plans/';
    case 'agents':
    case 'gases':
    case 'intravenous':
    case 'regional':
    case 'absorbents':
      return '/prices/';
    case 'machines':
      return '/machines/';
    case 'scenarios':
      return '/scenarios/';
    case 'theatreGroups':
    case 'monitorPrices':
      return '/theatres/';
    case 'sampling':
    case 'ranges':
      return '/uncertainty/';
    case 'overrides':
      return '/evidence/';
    case 'accounting':
      return /warming|bodyModel|macSet|solubility/i.test(path) ? '/comparison/' : '/payback/';
    case 'site':
      if (/electricityMarket|medicalAir|consumables|KnownBy$|baseYear/.test(path)) return '/emissions/';
      if (/electricity/.test(path)) return '/prices/';
      if (/monitoringStandard|facilityLevel/.test(path)) return '/monitoring/';
      if (/airLimits|recovery/.test(path)) return '/theatre-air/';
      if (/jurisdiction|lawful/.test(path)) return '/scenarios/';
      if (/departmentFootprint/.test(path)) return '/comparison/';
      return '/machines/';
    default:
      return '/case-mix/';
  }
}
