/** What was out of range: the quantity in words, the value given, what is allowed, and the cell that holds it. */
export interface OutOfRange {
  /** E.g. `Fresh gas flow`. */
  readonly quantity: string;
  /** null: none was given where one is needed. */
  readonly value: number | null;
  /** Unit of the value, e.g. `L/min`; an empty string for a pure number. */
  readonly unit: string;
  /** E.g. `above 0 to 20 L/min`. */
  readonly allowed: string;
  /** Path of the cell, e.g. `flowPlans.usual.phases.0.flowLPerMin`. */
  readonly path: string;
}

/** Thrown where a case cannot be computed because an input is outside what the model allows. */
export class OutOfRangeError extends Error implements OutOfRange {
  readonly quantity: string;
  readonly value: number | null;
  readonly unit: string;
  readonly allowed: string;
  readonly path: string;

  constructor({ quantity, value, unit, allowed, path }: OutOfRange) {
    const said = value === null ? 'none' : unit === '' ? `${value}` : `${value} ${unit}`;
    super(`${quantity}: ${said} was given; allowed is ${allowed}.`);
    this.name = 'OutOfRangeError';
    this.quantity = quantity;
    this.value = value;
    this.unit = unit;
    this.allowed = allowed;
    this.path = path;
  }
}
