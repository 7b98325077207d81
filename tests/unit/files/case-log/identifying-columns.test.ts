import { describe, expect, test } from 'vitest';
import { identifyingBecause } from '#lib/files/case-log/identifying-columns.ts';

const ten = (of: (index: number) => string) => Array.from({ length: 10 }, (_, index) => of(index));
const dull = ten(() => 'x');

describe('by their headings', () => {
  test.each([
    ...[
      'Patient name',
      'Name',
      'Surname',
      'patient_id',
      'MRN',
      'NHS number',
      'Hospital No.',
      'Date of birth',
      'DOB',
      'Address',
      'Postcode',
      'E-mail',
      'Surgeon'
    ],
    ...[
      'Nachname',
      'Vorname',
      'Geburtsdatum',
      'Geb.-Datum',
      'Anschrift',
      'PLZ',
      'Fallnummer',
      'Operateur',
      'Straße'
    ],
    ...['Nom', 'Prénom', 'Date de naissance', 'N° dossier', 'Adresse'],
    ...[
      'Apellidos',
      'Fecha de nacimiento',
      'Nº historia',
      'Dirección',
      'Cognome',
      'Codice fiscale',
      'Endereço'
    ],
    ...[
      'Personnummer',
      'Födelsedatum',
      'Achternaam',
      'Geboortedatum',
      'BSN',
      'PESEL',
      'Nazwisko',
      'Doğum tarihi'
    ],
    ...['Дата рождения', 'Фамилия', 'تاريخ الميلاد', '姓名', '出生日期', '患者ID']
  ])('%s is refused', (header) => {
    expect(identifyingBecause(header, dull)).toMatch(/sounds like/);
  });

  test.each([
    ...[
      'Procedure',
      'Procedure name',
      'Agent name',
      'Theatre no',
      'Age',
      'Weight (kg)',
      'Minutes',
      'Technique',
      'Date'
    ],
    ...[
      'Eingriff',
      'Saalnummer',
      'Narkosegas',
      'Alter',
      'Dauer',
      'Specialty code',
      'Fresh gas flow',
      'Acte',
      'Poids'
    ]
  ])('%s is not', (header) => {
    expect(identifyingBecause(header, dull)).toBeNull();
  });
});

describe('by their values, whatever the heading', () => {
  test.each([
    ['record numbers', ten((index) => String(7_000_123 + index))],
    ['record numbers with letters', ten((index) => `A${90_210 + 17 * index}`)],
    ['names', ten((index) => `M${'abcdefghij'[index]}rtin, Jos${'abcdefghij'[index]}`)],
    ['mail addresses', ten((index) => `p${index}@example.org`)],
    ['telephone numbers', ten((index) => `+49 30 901820 ${10 + index}`)],
    ['addresses', ten((index) => `Lindenstraße ${index + 1}, Ort`)],
    ['birth dates', ten((index) => `${1941 + 8 * index}-03-0${(index % 9) + 1}`)],
    ['hashes', ten((index) => `${index}f3a9c0d2e4b5a6978`)]
  ])('%s are refused', (_, values) => {
    expect(identifyingBecause('Column 7', values)).toMatch(/holds what looks like/);
  });

  test.each([
    ['minutes', ten((index) => String(40 + index * 7))],
    ['dates of two years', ten((index) => `202${3 + (index % 2)}-0${(index % 9) + 1}-11`)],
    ['procedures', ten((index) => ['Hernia repair', 'Hip, cemented', 'Tonsils'][index % 3] ?? '')],
    ['theatres', ten((index) => `T${index % 4}`)],
    ['procedure codes that recur', ten((index) => `K${40_000 + (index % 3)}`)],
    ['nothing', ten(() => '')]
  ])('%s are not', (_, values) => {
    expect(identifyingBecause('Column 7', values)).toBeNull();
  });
});

describe('one mistyped year among dates of operations', () => {
  const days = Array.from(
    { length: 200 },
    (_, index) => `2025-${String((index % 12) + 1).padStart(2, '0')}-15`
  );
  test.each(['2052-05-15', '1925-05-15'])('%s makes them no birth dates', (mistyped) => {
    expect(identifyingBecause('Day', days.with(150, mistyped))).toBeNull();
  });

  test.each([5, 20, 200])('birth dates of %i persons stay birth dates', (persons) => {
    const births = Array.from({ length: persons }, (_, index) => `${1940 + ((index * 37) % 66)}-05-15`);
    expect(identifyingBecause('Day', births)).toMatch(/birth dates/);
  });

  test('birth dates with months as names are found too', () => {
    expect(
      identifyingBecause(
        'Day',
        ten((index) => `04-MAR-${1940 + index * 7}`)
      )
    ).toMatch(/birth dates/);
  });
});
