/** What holds for the workings of all figures: in one file, as to record them all takes far longer than to look at them. */
import './leaves.ts';
import './printed-formulas.ts';
import './replay.ts';
import './units-of-formulas.ts';
