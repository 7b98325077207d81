/**
 * Columns of a log that may tell who somebody is. They are refused unless the user says otherwise, and what is refused
 * is never kept. It is a safety net, not a guarantee: whoever exports the log has to leave such columns out.
 */
import { foldHeader } from '#lib/workbook/match-headings.ts';

/** Words of headings that stand for people, numbers of theirs, birth dates and addresses. From memory, no source. */
const identifyingWords = new Set(
  `patient patients patientid patientenname patientennummer pat name names surname forename firstname lastname fullname
  mrn nhs chi pid upi uid uuid guid ssn ehr emr hospitalnumber hospital number no nr num id ident identifier identity
  account encounter visit episode admission record chart barcode insurance passport dob birth birthday birthdate born
  address street postcode postal zip zipcode phone telephone tel mobile email mail contact surgeon anaesthetist
  anesthetist anaesthesiologist anesthesiologist operator consultant doctor physician nurse staff initials
  vorname nachname familienname geburtsdatum geburtstag geb geboren fallnummer fall fallnr aufnahmenummer patnr
  versichertennummer versicherung adresse anschrift strasse straße plz wohnort telefon operateur anaesthesist anasthesist arzt
  nom prenom naissance ne ddn adresse rue ipp iep nip matricule numero numerodossier dossier assure secu medecin chirurgien
  nombre apellido apellidos nacimiento fechanacimiento direccion calle historia nhc dni nif telefono cirujano medico
  nome cognome nascita indirizzo via codicefiscale fiscale cartella chirurgo
  sobrenome nascimento endereco rua prontuario cpf
  naam voornaam achternaam geboortedatum geboren adres straat bsn patientnummer chirurg
  namn fornamn efternamn personnummer fodelsedatum fodd adress gata navn fornavn etternavn efternavn fodselsdato cpr
  fodselsnummer adresse nimi etunimi sukunimi hetu henkilotunnus syntymaaika osoite
  imie nazwisko pesel urodzenia adres ulica jmeno prijmeni rodne narozeni nev szuletesi taj lakcim
  ad soyad isim dogum kimlik tc adres имя фамилия отчество рождения адрес полис телефон
  الاسم الميلاد العنوان الهوية הכתובת שם כתובת זהות 姓名 出生日期 出生 身份证 地址 电话 住所 氏名 生年月日 患者 患者id 이름 주소 생년월일`
    .split(/\s+/)
    .map((word) => foldHeader(word))
);

/** Words that make a heading one of a thing and not of a person, e.g. in “procedure name”, “theatre no”. */
const thingWords = new Set(
  `procedure procedures operation surgery specialty speciality department service agent drug gas vapour vapor theatre
  theater room machine device ventilator technique case cases group code type flow age weight eingriff prozedur
  fachgebiet fachabteilung abteilung saal narkosegas verfahren acte intervention specialite salle procedimiento
  especialidad agente sala procedura intervento specialita procedimento ingreep specialisme operatie ingrepp zabieg`
    .split(/\s+/)
    .map((word) => foldHeader(word))
);

/** The most rows that are looked at. */
export const rowsLookedAt = 500;

/** Why a column may identify somebody, as a sentence; null where nothing speaks for it. */
export function identifyingBecause(header: string, values: readonly string[]): string | null {
  return byHeading(header) ?? byValues(header, values);
}

function byHeading(header: string): string | null {
  const words = foldHeader(header).split(' ');
  const found = [...words, words.join('')].find((word) => identifyingWords.has(word));
  return found !== undefined && !words.some((word) => thingWords.has(word))
    ? `“${header}” sounds like a name, number, birth date or address of a person.`
    : null;
}

function byValues(header: string, values: readonly string[]): string | null {
  const given = values.map((value) => value.trim()).filter((value) => value !== '');
  if (given.length < 5) return null;
  const share = (fits: (value: string) => boolean) => given.filter(fits).length / given.length;
  const distinct = new Set(given).size / given.length;
  const says = (what: string) => `“${header}” holds what looks like ${what}.`;

  if (share((value) => /^[^\s@]+@[^\s@]+\.[a-z]{2,}$/i.test(value)) > 0.3) return says('mail addresses');
  if (distinct > 0.8 && share((value) => /^[+(]?\d[\d ()/-]{8,}\d$/.test(value) && !isDate(value)) > 0.5)
    return says('telephone or record numbers');
  if (distinct > 0.9 && share((value) => /^[A-Za-z]{0,4}[-/ ]?\d{5,}[A-Za-z]?$/.test(value)) > 0.8)
    return says('numbers of persons or records');
  if (distinct > 0.9 && share((value) => /^[0-9a-f-]{16,}$/i.test(value)) > 0.8) return says('identifiers');
  if (distinct > 0.5 && share((value) => /^\p{Lu}[\p{L}'’-]+,\s*\p{Lu}[\p{L}'’. -]+$/u.test(value)) > 0.5)
    return says('names of persons');
  if (
    distinct > 0.3 &&
    share(
      (value) =>
        /\b\d{1,4}[a-z]?\b.*\p{L}{3,}|\p{L}{3,}.*\b\d{1,4}[a-z]?\b/iu.test(value) &&
        /stra(ss|ß)e|str\.|street|road|avenue|rue |calle|via |laan|gade|gatan|weg\b/iu.test(value)
    ) > 0.3
  )
    return says('addresses');
  const years = given
    .flatMap((value) => (isDate(value) ? (/\b(19|20)\d{2}\b/.exec(value) ?? []).slice(0, 1) : []))
    .map(Number);
  if (years.length > 0.8 * given.length && yearsSpanned(years) > 25)
    return says('birth dates: they span more than 25 years');
  return null;
}

/** From first to last year, mistyped ones left out: the few at either end that several years part from the rest. */
function yearsSpanned(years: readonly number[]): number {
  const sorted = [...years].sort((a, b) => a - b);
  const mayBeMistyped = sorted.length < 20 ? 0 : Math.max(1, Math.floor(sorted.length / 50));
  const isParted = (index: number) =>
    (sorted[index] as number) - (sorted[index - 1] as number) > mostYearsBetweenBirths;
  let first = 0;
  let last = sorted.length - 1;
  for (let count = 1; count <= mayBeMistyped; count++) {
    if (isParted(count)) first = count;
    if (isParted(sorted.length - count)) last = sorted.length - 1 - count;
  }
  return (sorted[last] as number) - (sorted[first] as number);
}

/** Between the years of birth of many patients there are hardly wider gaps; a mistyped year is off by more. */
const mostYearsBetweenBirths = 5;

const isDate = (value: string): boolean =>
  /^(\d{4}[-/.]\d{1,2}[-/.]\d{1,2}|\d{1,2}[-/.]\d{1,2}[-/.]\d{2,4}|\d{1,2}[-/. ]+\p{L}{3,}\.?[-/. ]+\d{4})([ T].*)?$/u.test(
    value
  );
