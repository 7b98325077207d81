/** What the trade takes for granted where use is held against purchases: common practice, no source. */

/** Bounds of estimate ÷ purchase outside which a reader is told. */
export const reconciliationBounds = { low: 0.7, high: 1.2 } as const;

/** What usually lies behind a difference. */
export const likelyCauses = {
  lessUsed:
    'flows or dial settings above the plan, cases missing from the case mix, long wash-outs, agent used outside the theatres or put in stock, for which Prices has a column',
  moreUsed:
    'flows below the plan, too many cases or minutes, a year of purchases that is not complete, stock being used up',
  moreNitrousOxideUsed:
    'a year of purchases that is not complete, cylinders bought elsewhere, stock being used up, too many cases or minutes with nitrous oxide, or a share of it above what is given'
} as const;
