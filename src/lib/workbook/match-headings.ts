/** Which column of a list, of a file's table or of a grid a heading means. */

/** A column that headings are met with. */
export interface HeadedColumn {
  readonly key: string;
  readonly header: string;
}

/** For each column of the file, in its order: the key of the table's column that takes it, or null for none. */
export type ColumnMapping = readonly (string | null)[];

/** What people write above a column, by its key. From memory, no source. */
const alsoCalled: Readonly<Record<string, readonly string[]>> = {
  name: ['procedure', 'operation', 'op', 'surgery', 'specialty', 'group', 'kind of case'],
  casesPerYear: [
    'cases',
    'number',
    'n',
    'no',
    'count',
    'volume',
    'number of cases',
    'cases a year',
    'per year'
  ],
  minutes: [
    'duration',
    'min',
    'mean min',
    'mean minutes',
    'mean duration',
    'time',
    'anaesthetic time',
    'length'
  ],
  ageYears: ['age', 'mean age', 'years'],
  weightKg: ['weight', 'mean weight', 'kg', 'body weight'],
  technique: ['anaesthesia', 'anaesthetic', 'anesthesia', 'type', 'type of anaesthesia', 'method'],
  agent: ['volatile', 'volatile agent', 'vapour', 'gas'],
  targetMac: ['mac', 'target mac', 'end tidal'],
  nitrousOxidePercent: ['n2o', 'nitrous'],
  inspiredOxygenPercent: ['fio2', 'oxygen', 'o2'],
  neuromuscularBlock: ['relaxant', 'relaxed', 'muscle relaxant', 'neuromuscular block', 'nmb'],
  measuredMlPerCase: ['ml', 'ml case', 'measured ml', 'liquid', 'consumption']
};

/** A heading without its unit, brackets, marks and capitals: `Bottle price [EUR]` and `bottlePrice` are one. */
export function foldHeader(header: string): string {
  return header
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/\(.*?\)|\[.*?\]/g, '')
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

/** Ways in which a heading may name a column, the surest first. */
const ways: readonly ((header: string, column: HeadedColumn) => boolean)[] = [
  (header, column) => header === column.header,
  (header, column) => foldHeader(header) === foldHeader(column.header),
  (header, column) => foldHeader(header) === foldHeader(column.key),
  (header, column) => alsoCalled[column.key]?.includes(foldHeader(header)) === true,
  (header, column) => {
    const [short, long] = [foldHeader(header), foldHeader(column.header)].sort((a, b) => a.length - b.length);
    return short !== undefined && short.length >= 4 && long?.startsWith(short) === true;
  }
];

/**
 * Which column of the file goes where, by heading: the table's own headings first, then their keys, then what people
 * call them, then headings that begin alike. Each column of the table is filled at most once; what is not recognised, or
 * could mean several columns that are still free, is left to the user's choice.
 */
export function mapColumns(headers: readonly string[], columns: readonly HeadedColumn[]): ColumnMapping {
  const mapping: (string | null)[] = headers.map(() => null);
  const free = new Set(columns.map((column) => column.key));
  for (const names of ways)
    headers.forEach((header, index) => {
      if (mapping[index] !== null) return;
      const [column, another] = columns.filter((each) => free.has(each.key) && names(header, each));
      if (column === undefined || another !== undefined) return;
      mapping[index] = column.key;
      free.delete(column.key);
    });
  return mapping;
}

/** Keys of the columns that a heading by itself could mean, in the surest way in which it means any. */
export function columnsMeant(header: string, columns: readonly HeadedColumn[]): readonly string[] {
  for (const names of ways) {
    const meant = columns.filter((column) => names(header, column)).map(({ key }) => key);
    if (meant.length > 0) return meant;
  }
  return [];
}

/** Why headings that look like one of the columns fill none, in a sentence each. */
export function unmetHeadings(
  headers: readonly string[],
  columns: readonly HeadedColumn[],
  mapping: ColumnMapping
): readonly string[] {
  const titleOf = (key: string): string => columns.find((column) => column.key === key)?.header ?? key;
  return headers.flatMap((header, index) => {
    if (mapping[index] !== null) return [];
    const meant = columnsMeant(header, columns);
    const free = meant.filter((key) => !mapping.includes(key));
    if (free.length > 1)
      return [
        `“${header}” could mean ${free.map((key) => `“${titleOf(key)}”`).join(' or ')}, so it is left out until you choose.`
      ];
    const [only] = meant;
    const filler = meant.length === 1 && only !== undefined ? headers[mapping.indexOf(only)] : undefined;
    return filler === undefined
      ? []
      : [`“${header}” names “${titleOf(only ?? '')}”, which “${filler}” fills already, so it is left out.`];
  });
}
