/**
 * The works that more than one record cites. An article whose title was not noted is called by where it stands,
 * never by a made-up title.
 */
import type { Source } from './constant.ts';

/** A journal article known by its place: `container year;locator`. */
export function article(place: {
  readonly authors?: string;
  readonly container: string;
  readonly year: number;
  readonly locator?: string;
  readonly doi?: string;
}): Source {
  const { container, year, locator } = place;
  return { ...place, title: `Article in ${container} ${year}${locator === undefined ? '' : `;${locator}`}` };
}

/** What the trade takes for granted and no source was found for. */
export const commonPractice: Source = { title: 'common practice, no source' };

/** A US prescribing information; the section is the locator. */
export const usLabel = (agent: string, section: string): Source => ({
  title: `US prescribing information, ${agent}`,
  locator: section
});

export const mapleson1996: Source = {
  authors: 'Mapleson WW',
  title: 'Effect of age on MAC in humans: a meta-analysis',
  container: 'Br J Anaesth',
  year: 1996,
  locator: '76:179-85'
};

export const biro2014 = article({
  authors: 'Biro P',
  container: 'Acta Anaesthesiol Scand',
  year: 2014,
  locator: '58:968-72',
  doi: '10.1111/aas.12374'
});

export const carpenter1986: Source = {
  authors: 'Carpenter RL, Eger EI, Johnson BH, Unadkat JD, Sheiner LB',
  title: 'The extent of metabolism of inhaled anesthetics in humans',
  container: 'Anesthesiology',
  year: 1986,
  locator: '65:201-5',
  doi: '10.1097/00000542-198608000-00013'
};

export const horwitz2016: Source = {
  authors: 'Horwitz M, Jakobsson JG',
  title: 'Desflurane and sevoflurane use during low- and minimal-flow anesthesia at fixed vaporizer settings',
  container: 'Minerva Anestesiol',
  year: 2016,
  locator: '82:180-5'
};

export const mullet1993: Source = {
  authors: 'Mullet CE et al.',
  title:
    'Pulmonary CO2 elimination during surgical procedures using intra- or extraperitoneal CO2 insufflation',
  container: 'Anesth Analg',
  year: 1993,
  locator: '76:622-6',
  doi: '10.1213/00000539-199303000-00031'
};

/** Called by its place, as its title carries a brand. */
export const higuchi2001 = article({
  authors: 'Higuchi H, Adachi Y, Arimura S, Kanno M, Satoh T',
  container: 'Anesth Analg',
  year: 2001,
  locator: '93:221-5'
});

export const lindahl1989: Source = {
  authors: 'Lindahl SGE',
  title:
    'Oxygen consumption and carbon dioxide elimination in infants and children during anaesthesia and surgery',
  container: 'Br J Anaesth',
  year: 1989,
  locator: '62:70-6',
  doi: '10.1093/bja/62.1.70'
};

export const levitt2007: Source = {
  authors: 'Levitt DG',
  title: 'Heterogeneity of human adipose blood flow',
  container: 'BMC Clin Pharmacol',
  year: 2007,
  locator: '7:1',
  doi: '10.1186/1472-6904-7-1'
};

export const millerComparison: Source = {
  title: "Miller's Anesthesia",
  locator: 'table: comparative characteristics of inhaled anaesthetics (edition not noted)'
};

export const millerSixthTable: Source = { title: "Miller's Anesthesia", locator: '6th ed., Table 5-1' };

export const millerSixthCircuits: Source = { title: "Miller's Anesthesia", locator: '6th ed., ch. 5' };

export const eger1974: Source = { authors: 'Eger EI', title: 'Anesthetic Uptake and Action', year: 1974 };

export const loweErnst1981: Source = {
  authors: 'Lowe HJ, Ernst EA',
  title: 'The Quantitative Practice of Anesthesia',
  year: 1981
};

const toxicokineticsTable = 'datatables/Tissue-Volumes-Flows.txt';

export const organVolumes: Source = {
  authors: 'ILSI Risk Science Institute',
  title: 'Organ volumes, as tabulated in the US EPA high-throughput toxicokinetics data set',
  container: 'repository USEPA/CompTox-ExpoCast-httk',
  year: 1994,
  locator: toxicokineticsTable
};

export const organFlows: Source = {
  authors: 'Davies B, Morris T',
  title: 'Organ blood flows, as tabulated in the US EPA high-throughput toxicokinetics data set',
  container: 'repository USEPA/CompTox-ExpoCast-httk',
  year: 1993,
  locator: toxicokineticsTable
};

export const ipccAr6: Source = {
  authors: 'IPCC',
  title: 'Sixth Assessment Report, Working Group I, machine-readable supplement to chapter 7',
  year: 2021,
  locator: 'Table 7.SM.7'
};

export const ipccAr5: Source = {
  authors: 'IPCC',
  title: 'Fifth Assessment Report, Working Group I, as reproduced in US 40 CFR 98 Table A-1',
  year: 2013,
  locator: 'Table 8.A.1'
};

export const sulbaekAndersen2012: Source = {
  authors: 'Sulbaek Andersen MP et al.',
  title:
    'Assessing the impact on global climate from general anesthetic gases (Anesth Analg 2012;114:1081-5), and an article in J Phys Chem A 2012;116:5806',
  container: 'Anesth Analg; J Phys Chem A',
  year: 2012,
  locator: '114:1081-5; 116:5806'
};

export const niosh1977: Source = {
  authors: 'NIOSH',
  title: 'Publication 77-140',
  year: 1977,
  locator: '77-140'
};

export const hseEh40: Source = {
  authors: 'Health and Safety Executive',
  title: 'EH40, workplace exposure limits',
  locator: 'EH40'
};
