/** Thrown where a price cannot be worked with; `path` is the cell, the message says what is allowed. */
export class MoneyInputError extends RangeError {
  readonly path: string;

  constructor(path: string, sentence: string) {
    super(sentence);
    this.name = 'MoneyInputError';
    this.path = path;
  }
}
