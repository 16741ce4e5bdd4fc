/** Sentences of the commands that predict. */

export const planSentences = {
  aircraftMissing: (command: string): string =>
    `${command} needs an aircraft file: --aircraft FILE. To start one: tallywatt new aircraft.json`,
  logOrBook: (command: string): string =>
    `${command} takes the parts from --log or from --book, not from both. Leave one of them out.`,
  noFlightsInBook: (name: string): string =>
    `The logbook holds no flight of ${name}, so nothing is measured. Add one: tallywatt add LOG`,
  nothingChanges: (): string =>
    "swap needs a change: --propeller 19x8, --blades N, --cells N, --capacity MAH, --ambient C or --elevation M",
  propellerWrong: (text: string): string =>
    `--propeller is "${text}". It must be diameter x pitch in inches, 1 to 100 x 0.5 to 100; for example --propeller 19x8`,
  noFlights: (log: string): string => `${log}: no flight in it, so it says nothing about the parts.`,
  source: (name: string, flights: number, leftOut: number, air: string | undefined): string => {
    const from =
      flights === 0
        ? `the aircraft file and published ranges; ${leftOut === 0 ? "no log given" : "no logged run counts"}`
        : `${flights} logged ${flights === 1 ? "run" : "runs"}, the aircraft file and published ranges`;
    return `${name}: predicted from ${from}${air === undefined ? "" : `; ${air}`}.`;
  },
  notPredicted: (measures: string, why: string): string => `Not known: ${measures}. Why: ${why}.`,
  thrust: (text: string): string => `Static thrust ${text}, an estimate from published coefficients.`,
  widened: (remarks: readonly string[]): string => `Note: ${remarks.join("; ")}.`,
  ladder: (sizes: string): string => `Same load, same kind: ${sizes} (diameter x pitch, inches).`,
  cautions: (): string =>
    "A prediction, not a test: makers' limits come first, and a bench run with a log settles it. The minutes are by " +
    "charge alone, no timer: timer sets one from logged flights, by volts and heat too.",
};
