/** Sentences of the season command. */
export const seasonSentences = {
  reportMissing: (): string => "Say where the season report goes: --report=FILE.html",
  wrote: (path: string, flights: number): string =>
    `Season report of ${flights === 1 ? "1 flight" : `${flights} flights`}: ${path}`,
  wroteFlights: (reports: number, folder: string): string =>
    `${reports === 1 ? "1 flight report" : `${reports} flight reports`}: ${folder}`,
  withoutReport: (flight: string, why: string): string => `${flight} has no report of its own: ${why}`,
  notFound: (): string => "this release does not find the flight in its log; see tallywatt recheck",
};
