/** A lock whose holder has not renewed it for this long belongs to a program that died. */
export const STALE_LOCK_S = 10;
/** Waiting longer than this for a living holder is given up. */
export const LONGEST_WAIT_S = 60;

export class LockBusyError extends Error {
  constructor() {
    super(
      `another tallywatt has been changing this logbook for ${LONGEST_WAIT_S} s; nothing was written, try again`,
    );
    this.name = "LockBusyError";
  }
}
