/** How far a probe's reading lags behind the controller at its peak, with its half-width. */
export interface LagCorrection {
  readonly valueC: number;
  readonly halfWidthC: number;
}
