/** Where a text stops being JSON: engines word this differently and often leave out the place, so it is found here. */
export interface JsonFault {
  /** Counted from 1. */
  readonly line: number;
  /** Counted from 1, in characters. */
  readonly column: number;
  /** What stands there; '' at the end of the text. */
  readonly found: string;
  /** What could stand there. */
  readonly wanted: string;
  /** True where the text ends too early: the file was cut off. */
  readonly cutOff: boolean;
}

const token =
  /[ \t\n\r]*(?:([{}[\],:])|("(?:[ !#-[\]-\uffff]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*")|(?:-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)(?![\w.+-]))/y;
/** What a token cut in two looks like at the end of a text. */
const halfToken =
  /[ \t\n\r]*(?:"(?:[ !#-[\]-\uffff]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*(?:\\(?:u[0-9a-fA-F]{0,3})?)?|t|tr|tru|f|fa|fal|fals|n|nu|nul|-|-?\d+\.|-?\d+(?:\.\d+)?[eE][+-]?)$/y;

const inWords = {
  value: 'a value',
  'value or ]': 'a value or ]',
  name: 'a name in quotation marks',
  'name or }': 'a name in quotation marks or }',
  colon: 'a colon',
  ', or }': 'a comma or }',
  ', or ]': 'a comma or ]',
  end: 'the end of the file'
} as const;
type Wanted = keyof typeof inWords;

/** The first fault of a text that is not JSON; null where it is JSON. */
export function jsonFault(text: string): JsonFault | null {
  const open: ('{' | '[')[] = [];
  let wanted: Wanted | null = 'value';
  let at = 0;
  for (;;) {
    token.lastIndex = at;
    const found = token.exec(text);
    const next: Wanted | null =
      found === null ? null : afterToken({ mark: found[1], string: found[2] }, wanted, open);
    if (next === null) break;
    wanted = next;
    at = token.lastIndex;
  }
  const start = at + (/^[ \t\n\r]*/.exec(text.slice(at))?.[0].length ?? 0);
  const atEnd = start === text.length;
  if (wanted === 'end' && atEnd) return null;
  halfToken.lastIndex = at;
  const lines = text.slice(0, start).split('\n');
  return {
    line: lines.length,
    column: [...(lines.at(-1) ?? '')].length + 1,
    found: [...(/^.{0,24}/.exec(text.slice(start, start + 24))?.[0] ?? '')].slice(0, 12).join(''),
    wanted: inWords[wanted],
    cutOff: wanted !== 'end' && (atEnd || halfToken.test(text))
  };
}

/** What may follow once a token has been taken; null where the token may not stand there. Keeps `open` up to date. */
function afterToken(
  { mark, string }: { mark: string | undefined; string: string | undefined },
  wanted: Wanted,
  open: ('{' | '[')[]
): Wanted | null {
  const afterValue = (): Wanted => (open.length === 0 ? 'end' : open.at(-1) === '{' ? ', or }' : ', or ]');
  const takesValue = wanted === 'value' || wanted === 'value or ]';
  switch (mark) {
    case '{':
    case '[':
      if (!takesValue) return null;
      open.push(mark);
      return mark === '{' ? 'name or }' : 'value or ]';
    case '}':
    case ']':
      if (!wanted.endsWith(`or ${mark}`)) return null;
      open.pop();
      return afterValue();
    case ':':
      return wanted === 'colon' ? 'value' : null;
    case ',':
      return wanted === ', or }' ? 'name' : wanted === ', or ]' ? 'value' : null;
    default:
      if (takesValue) return afterValue();
      return string !== undefined && wanted.startsWith('name') ? 'colon' : null;
  }
}
