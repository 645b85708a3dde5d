/** Something the domain will not compute: impossible or meaningless input. It says what and where. */
export class Refusal extends Error {
  readonly code: string;
  /** JSON pointer into the plan, where known. */
  readonly at: string;

  constructor(code: string, says: string, at = '') {
    super(says);
    this.name = 'Refusal';
    this.code = code;
    this.at = at;
  }
}
