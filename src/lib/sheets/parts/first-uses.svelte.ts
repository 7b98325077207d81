/** Which words of the trade a sheet has marked already: each is marked once, where it is first used. */
import { getContext, setContext } from 'svelte';
import type { GlossaryEntry } from './glossary.ts';
import { termsOn } from './glossary.ts';

/** A stretch of text; with an entry, it is that word and is to be marked. */
export interface Piece {
  readonly text: string;
  readonly entry: GlossaryEntry | null;
}

const literally = (term: string): string => term.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** A term as a whole word, small or capital, one or several. */
const patternOf = ({ term, also = [] }: GlossaryEntry): RegExp =>
  new RegExp(`(?<!\\p{L})(?:${[term, ...also].map(literally).join('|')})s?(?!\\p{L})`, 'iu');

export class FirstUses {
  /** Plain on purpose: a text that claims a word must not make all others look again. */
  readonly #terms: readonly {
    readonly entry: GlossaryEntry;
    readonly pattern: RegExp;
    markedBy: object | null;
  }[];
  /** Counts what was set free, so that texts that are still there look again. */
  #released = $state(0);

  constructor(terms: readonly GlossaryEntry[]) {
    this.#terms = terms.map((entry) => ({ entry, pattern: patternOf(entry), markedBy: null }));
  }

  /**
   * Cuts texts at the words that are used here for the first time. The first to ask has a word, and texts ask when they
   * are made, which is in reading order; whoever asks again gives back what it had.
   * @param owner stands for the place of the texts, and is to be released with it
   */
  claim(owner: object, texts: readonly string[]): readonly (readonly Piece[])[] {
    void this.#released;
    this.#forget(owner);
    return texts.map((text) => this.#cut(owner, text));
  }

  /** Sets free what was claimed for a place that is no longer shown. */
  release(owner: object): void {
    if (this.#forget(owner)) this.#released += 1;
  }

  #forget(owner: object): boolean {
    const own = this.#terms.filter(({ markedBy }) => markedBy === owner);
    for (const term of own) term.markedBy = null;
    return own.length > 0;
  }

  #cut(owner: object, text: string): readonly Piece[] {
    const [next] = this.#terms
      .flatMap((term) => {
        const found = term.markedBy === null ? term.pattern.exec(text) : null;
        return found === null ? [] : [{ term, at: found.index, word: found[0] }];
      })
      .sort((one, other) => one.at - other.at);
    if (next === undefined) return text === '' ? [] : [{ text, entry: null }];
    const { term, at, word } = next;
    term.markedBy = owner;
    return [
      ...(at === 0 ? [] : [{ text: text.slice(0, at), entry: null }]),
      { text: word, entry: term.entry },
      ...this.#cut(owner, text.slice(at + word.length))
    ];
  }
}

const key = Symbol('first uses of terms');

/** Starts afresh for the components inside the calling one. */
export const startFirstUses = (route: string): FirstUses => setContext(key, new FirstUses(termsOn(route)));

/** Those of the sheet that the calling component stands on; outside a sheet, nothing is marked. */
export const firstUses = (): FirstUses => getContext<FirstUses | undefined>(key) ?? new FirstUses([]);
