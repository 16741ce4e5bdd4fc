import type { CommandDefinition } from "./commandDefinition.ts";
import { READING_OPTIONS } from "./readingOptions.ts";

export const command: CommandDefinition = {
  operands: "<LOG...>",
  about: "what one log says, held against the plan and the limits",
  examples: [
    { line: "tallywatt check flight.csv", about: "needs no option on a good log" },
    {
      line: "tallywatt check flight.csv --aircraft tern.json --report",
      about: "writes flight.html beside the log",
    },
    {
      line: "tallywatt check one.csv two.csv --aircraft tern.json --report=reports",
      about: "a report each, in a folder",
    },
    { line: "tallywatt check - --json < flight.csv", about: "reads standard input, prints JSON" },
  ],
  options: [
    { flags: "--aircraft <FILE>", help: "aircraft file: what is fitted and what was planned" },
    { flags: "--ambient <C>", help: "air temperature of the day, degrees Celsius" },
    { flags: "--start-pct <N>", help: "state of charge at the start, percent" },
    { flags: "--report [FILE.html]", help: "write the report beside the log, or where = says" },
    { flags: "--force", help: "replace a file that tallywatt did not write" },
    { flags: "--json", help: "the result as JSON on standard output, nothing else" },
    ...READING_OPTIONS,
  ],
  notes: [
    "LOG is a CSV file, or - for standard input. Channels for --column and --unit: tallywatt columns LOG",
  ],
  // Help needs none of the code that reads and measures.
  run: async (call, io, talk) => (await import("./checkLogs.ts")).checkLogs(call, io, talk),
};
