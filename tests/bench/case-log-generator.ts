/**
 * A log of single anaesthetics as a hospital might export it, for tests and benches: every figure is invented, and the
 * same seed gives the same bytes. About one row in forty has a defect. Minutes, ages, weights and flows are such that
 * their sums are exact in binary, so that two programs that add them up in any order agree to the last bit.
 */

/** Kinds of case with their share, typical minutes, age, weight, technique and agent. */
const kinds = [
  ['Laparoscopic cholecystectomy', 60, 75, 50, 80, 'volatile', 'sevoflurane'],
  ['Hernia repair, open', 40, 60, 56, 80, 'volatile', 'sevoflurane'],
  ['Laparoscopic appendicectomy', 30, 55, 28, 72, 'volatile', 'sevoflurane'],
  ['Bowel resection', 18, 190, 67, 76, 'volatile', 'desflurane'],
  ['Weight-loss surgery', 12, 110, 44, 126, 'volatile', 'desflurane'],
  ['Breast surgery', 34, 85, 58, 70, 'volatile', 'sevoflurane'],
  ['Fracture fixation', 42, 95, 52, 76, 'volatile', 'sevoflurane'],
  ['Fracture fixation', 10, 90, 60, 78, 'volatile', 'isoflurane'],
  ['Tonsillectomy', 26, 40, 7, 25, 'volatile', 'sevoflurane'],
  ['Day surgery, “minor”', 50, 30, 40, 74, 'volatile', 'sevoflurane'],
  ['Neck surgery', 16, 120, 54, 75, 'intravenous', ''],
  ['Endoscopy', 22, 35, 61, 77, 'intravenous', ''],
  ['Hip replacement', 30, 95, 71, 79, 'regional', ''],
  ['Caesarean section', 28, 65, 32, 82, 'regional', '']
] as const;
const shares = kinds.reduce((sum, [, share]) => sum + share, 0);

export const caseLogHeadings =
  'Patient name,Record number,Date of birth,Date,Procedure,Technique,Agent,Minutes,Age,Weight,Mean flow,Liquid agent';

/** Uniform numbers from 0 to 1, the same for the same seed (mulberry32, public domain). */
function uniform(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

const firstDay = Date.UTC(2023, 0, 1);
const days = 730;
const names = ['Amsel', 'Birke', 'Chen', 'Duarte', 'Eke', 'Fujita', 'Grønn', 'Haddad', 'Ivanova', 'Jónsson'];

/** The bytes of a log of so many rows, piece by piece. */
export function* caseLog({
  rows,
  seed
}: {
  readonly rows: number;
  readonly seed: number;
}): Generator<Uint8Array> {
  const encoder = new TextEncoder();
  const random = uniform(seed);
  const around = (middle: number, spread: number) => middle + (random() + random() + random() - 1.5) * spread;
  let text = `${caseLogHeadings}\r\n`;
  for (let row = 0; row < rows; row++) {
    let at = random() * shares;
    const kind = kinds.find(([, share]) => (at -= share) < 0) ?? kinds[0];
    const [procedure, , typicalMinutes, typicalAge, typicalWeight, technique, agent] = kind;
    const date = new Date(firstDay + Math.floor(random() * days) * 86_400_000);
    const age = Math.max(1, Math.round(around(typicalAge, typicalAge / 3)));
    const cells = {
      name: `"${names[row % names.length]}, ${names[(row * 7) % 10]?.charAt(0)}."`,
      record: String(70_000_000 + row),
      birth: `${date.getUTCFullYear() - age}-06-15`,
      date: date.toISOString().slice(0, 10),
      procedure: procedure.includes(',') ? `"${procedure}"` : procedure,
      technique: technique as string,
      agent: agent as string,
      minutes: String(Math.max(5, Math.round(around(typicalMinutes, typicalMinutes / 2)))),
      age: String(age),
      weight: String(Math.max(4, Math.round(around(typicalWeight, typicalWeight / 3) * 2) / 2)),
      flow: technique === 'regional' ? '' : String(Math.round(around(2, 1.5) * 4) / 4 || 0.25),
      liquid: agent === '' ? '' : String(Math.round(around(20, 15) * 2) / 2)
    };
    spoil(cells, random());
    text += `${Object.values(cells).join(',')}\r\n`;
    if (text.length > 1 << 18) {
      yield encoder.encode(text);
      text = '';
    }
  }
  yield encoder.encode(text);
}

/** What goes wrong in logs, in about one row of forty. */
function spoil(cells: Record<string, string>, chance: number): void {
  const defects: readonly (readonly [string, string])[] = [
    ['minutes', ''],
    ['minutes', '0'],
    ['minutes', '5000'],
    ['procedure', '  '],
    ['date', ''],
    ['agent', 'xenon'],
    ['technique', 'unknown'],
    ['technique', 'regional'],
    ['age', ''],
    ['age', '130'],
    ['weight', ''],
    ['procedure', 'Rare operation'],
    ['procedure', 'BREAST SURGERY']
  ];
  const defect = defects[Math.floor(chance * defects.length * 40)];
  if (defect !== undefined) cells[defect[0]] = defect[1];
}
