/** The stretch of time on show, seconds since the log began. */
export interface View {
  readonly fromS: number;
  readonly toS: number;
}

/** Closest that a zoom may come. */
export const SHORTEST_VIEW_S = 1;

/** Moves and shortens a view until it lies inside the whole and is not shorter than one second. */
export function fittedView(view: View, whole: View): View {
  const wholeS = whole.toS - whole.fromS;
  const spanS = Math.min(wholeS, Math.max(Math.min(SHORTEST_VIEW_S, wholeS), view.toS - view.fromS));
  const fromS = Math.min(Math.max(view.fromS, whole.fromS), whole.toS - spanS);
  return { fromS, toS: fromS + spanS };
}

/** Scales the span by `factor` (below 1 zooms in) with `centreS` staying where it is on the screen. */
export function zoomedView(view: View, whole: View, factor: number, centreS: number): View {
  const centre = Math.min(Math.max(centreS, view.fromS), view.toS);
  const fromS = centre - (centre - view.fromS) * factor;
  return fittedView({ fromS, toS: fromS + (view.toS - view.fromS) * factor }, whole);
}

/** Moves by a share of the span, earlier when negative. */
export function pannedView(view: View, whole: View, share: number): View {
  const byS = (view.toS - view.fromS) * share;
  return fittedView({ fromS: view.fromS + byS, toS: view.toS + byS }, whole);
}

export function isWhole(view: View, whole: View): boolean {
  return view.fromS <= whole.fromS && view.toS >= whole.toS;
}
