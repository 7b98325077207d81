import { giveProvenance } from '#lib/charts/provenance.ts';
import { desk } from '#lib/state/app.ts';
import { notInForceInWords } from '#lib/workbook/not-in-force.ts';

/** Has all charts of the app say whose figures they show; called once, where the app's outermost component is made. */
export const tellChartsOfDesk = (): void =>
  giveProvenance(() => ({
    title: desk.workbook.title,
    invented: desk.workbook.invented,
    notInForce: notInForceInWords(desk.notInForce).replace(/\.$/, ''),
    locale: desk.locale
  }));
