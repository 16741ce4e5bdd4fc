const ESTIMATED =
  "estimated, no current was logged: from shaft speed, pack volts and the power published for this kind of propeller";

export function estimatedAs(more: string | undefined): string {
  return more === undefined ? ESTIMATED : `${ESTIMATED}; ${more}`;
}
