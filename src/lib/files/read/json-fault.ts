import { visit } from 'jsonc-parser';

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

const afterValueIn = { none: 'the end of the file', '{': 'a comma or }', '[': 'a comma or ]' } as const;
const name = 'a name in quotation marks';

/** JSON alone, and none of its dialects. */
const strict = { disallowComments: true, allowTrailingComma: false, allowEmptyContent: false };

/** The library's codes for a string and a number that end too early. */
const endsTooEarly: readonly number[] = [12, 13];
/** What is no token yet where the text ends within it. */
const words = ['true', 'false', 'null', '-0'];

/**
 * The first fault of a text that is not JSON; null where it is JSON, or nested so deeply that it cannot be read through
 * (some thousand levels).
 */
export function jsonFault(text: string): JsonFault | null {
  let fault: JsonFault | null = null;
  const open: ('{' | '[')[] = [];
  let wanted = 'a value';
  const afterValue = () => (wanted = afterValueIn[open.at(-1) ?? 'none']);
  const begin = (mark: '{' | '[') => {
    open.push(mark);
    wanted = mark === '{' ? `${name} or }` : 'a value or ]';
  };
  const end = (offset: number) => {
    // The end of the text ends a list, too, but is not what was wanted.
    if (offset === text.length) return;
    open.pop();
    afterValue();
  };
  try {
    visit(
      text,
      {
        onObjectBegin: () => begin('{'),
        onArrayBegin: () => begin('['),
        onObjectProperty: () => (wanted = 'a colon'),
        onSeparator: (mark) => (wanted = mark === ':' || open.at(-1) === '[' ? 'a value' : name),
        onLiteralValue: afterValue,
        onObjectEnd: end,
        onArrayEnd: end,
        onError(code, offset, length, line, character) {
          const given = text.slice(offset, offset + length);
          fault ??= {
            line: line + 1,
            column: [...text.slice(offset - character, offset)].length + 1,
            found: [...(/^.{0,24}/.exec(text.slice(offset, offset + 24))?.[0] ?? '')].slice(0, 12).join(''),
            wanted,
            cutOff:
              wanted !== afterValueIn.none &&
              offset + length === text.length &&
              (endsTooEarly.includes(code) || words.some((word) => word.startsWith(given)))
          };
        }
      },
      strict
    );
  } catch (error) {
    // The library follows what is nested by calls of its own, of which there can be only so many.
    if (!(error instanceof RangeError)) throw error;
  }
  return fault;
}
