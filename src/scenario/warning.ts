/** What is legal but seldom wise, as data. */
export interface Warning {
  readonly code: string;
  readonly message: string;
  /** Path in the scenario file, dotted; '' for the whole. */
  readonly path: string;
}
