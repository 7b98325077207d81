/** One measurement of a bench, as the command prints it. */
export interface BenchRow {
  name: string;
  value: number;
  unit: string;
  /** What is aimed at, in words, e.g. `at least 5 times`. */
  target: string;
  met: boolean;
}
