import { describe, expect, test } from 'vitest';
import { jsonFault } from '#lib/files/read/json-fault.ts';

test.each(['{"a": [1, -0.5e3, "b\\u00e9", true, null], "c": {}}', ' 1 ', '[]'])('%j has none', (text) => {
  expect(jsonFault(text)).toBeNull();
});

test.each([
  ['', 'a value'],
  ['{', 'a name in quotation marks or }'],
  ['[', 'a value or ]'],
  ['{"a"', 'a colon'],
  ['{"a":', 'a value'],
  ['{"a": 1', 'a comma or }'],
  ['{"a": 1,', 'a name in quotation marks'],
  ['[{"a": 1}', 'a comma or ]'],
  ['{"a": [1]', 'a comma or }'],
  ['[1,', 'a value']
])('where %j ends, something is due', (text, wanted) => {
  expect(jsonFault(text)).toMatchObject({ wanted, found: '', column: text.length + 1, cutOff: true });
});

test.each(['["a', '["a\\', '["a\\u00', '[tru', '[n', '[-', '[1.', '[1e', '[1e+'])(
  '%j ends within what it began with',
  (text) => {
    expect(jsonFault(text)).toMatchObject({ column: 2, wanted: 'a value or ]', cutOff: true });
  }
);

test.each(['["a\n', '[x', '[trux', '[1.x', "['a"])('%j is wrong before it ends', (text) => {
  expect(jsonFault(text)).toMatchObject({ cutOff: false });
});

describe('the place', () => {
  test('is counted in lines and characters', () => {
    expect(jsonFault('[\r\n "😀", "é" 2]')).toMatchObject({ line: 2, column: 11, found: '2]' });
  });

  test('is that of the first fault, whatever comes after it', () => {
    expect(jsonFault('[1,,\n2,,{]')).toMatchObject({ line: 1, column: 4, wanted: 'a value' });
    expect(jsonFault(`[1,,${'['.repeat(200_000)}`)).toMatchObject({ line: 1, column: 4 });
  });

  test('of a remark, which JSON has not, is where it begins', () => {
    expect(jsonFault('{"a": 1 // one\n}')).toMatchObject({
      column: 9,
      found: '// one',
      wanted: 'a comma or }'
    });
  });
});

test('none is found beyond what can be read through', () => {
  expect(jsonFault('['.repeat(200_000))).toBeNull();
});
