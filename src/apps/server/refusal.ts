/** A request that is not answered as asked: status and reason. */
export class Refusal extends Error {
  readonly status: number;
  /** Methods that would do, for a wrong one. */
  readonly allow: string | null;
  constructor(status: number, reason: string, allow: string | null = null) {
    super(reason);
    this.name = "Refusal";
    this.status = status;
    this.allow = allow;
  }
}
