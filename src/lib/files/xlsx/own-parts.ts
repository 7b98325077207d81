/** Parts of a spreadsheet file in which a program names itself and its look: this project's own, not the library's. */
const name = 'Vapour Ledger';

/** The palette of the pages on paper (`tokens.css`): grounds, then the colours of series, then links. */
const colours = {
  dk2: '544E46',
  lt2: 'F2EEE7',
  accent1: '0B59A5',
  accent2: 'B08A23',
  accent3: '5F2145',
  accent4: '3C9C8E',
  accent5: '556114',
  accent6: 'BC5556',
  hlink: '1D4A8F',
  folHlink: '5F2145'
} as const;

const declaration = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const font = (typeface: string) => `<a:latin typeface="${typeface}"/><a:ea typeface=""/><a:cs typeface=""/>`;
/** The format wants three of each kind, from slight to strong; flat fills and hairlines will do for all. */
const threeTimes = (part: string) => part.repeat(3);
const fill = '<a:solidFill><a:schemeClr val="phClr"/></a:solidFill>';

/** The theme (ECMA-376, part 1, 20.1.6.9): what a chart or a coloured cell takes that a reader adds. */
const themeXml = (typeface: string): string =>
  `${declaration}<a:theme xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main" name="${name}"><a:themeElements>` +
  `<a:clrScheme name="${name}"><a:dk1><a:sysClr val="windowText" lastClr="000000"/></a:dk1><a:lt1><a:sysClr val="window" lastClr="FFFFFF"/></a:lt1>` +
  Object.entries(colours)
    .map(([place, rgb]) => `<a:${place}><a:srgbClr val="${rgb}"/></a:${place}>`)
    .join('') +
  `</a:clrScheme><a:fontScheme name="${name}"><a:majorFont>${font(typeface)}</a:majorFont><a:minorFont>${font(typeface)}</a:minorFont></a:fontScheme>` +
  `<a:fmtScheme name="${name}"><a:fillStyleLst>${threeTimes(fill)}</a:fillStyleLst>` +
  `<a:lnStyleLst>${threeTimes(`<a:ln w="9525">${fill}</a:ln>`)}</a:lnStyleLst>` +
  `<a:effectStyleLst>${threeTimes('<a:effectStyle><a:effectLst/></a:effectStyle>')}</a:effectStyleLst>` +
  `<a:bgFillStyleLst>${threeTimes(fill)}</a:bgFillStyleLst></a:fmtScheme></a:themeElements></a:theme>`;

const applicationXml =
  `${declaration}<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties">` +
  `<Application>${name}</Application><DocSecurity>0</DocSecurity></Properties>`;

/** The parts by their names in the archive. */
export const ownParts = (typeface: string): ReadonlyMap<string, string> =>
  new Map([
    ['xl/theme/theme1.xml', themeXml(typeface)],
    ['docProps/app.xml', applicationXml]
  ]);
