/** Every sentence of the command line itself; those about a log come with its notices. */

const list = (words: readonly string[]): string => words.join(", ");

export const usageSentences = {
  unknownCommand: (name: string, nearest: string | null, names: readonly string[]): string =>
    nearest === null
      ? `There is no command "${name}". The commands are ${list(names)}.`
      : `There is no command "${name}". Did you mean ${nearest}? Help: tallywatt --help`,
  unknownOption: (option: string, nearest: string | null, help: string): string =>
    nearest === null
      ? `There is no option ${option}. Help: ${help}`
      : `There is no option ${option}. Did you mean ${nearest}? Help: ${help}`,
  valueMissing: (option: string, next: string | null): string =>
    next === null
      ? `${option} needs a value after it.`
      : `${option} needs a value, but the option ${next} follows it.`,
  operandMissing: (operand: string, help: string): string => `${operand} is missing. Help: ${help}`,
  other: (problem: string, help: string): string => `${problem}. Help: ${help}`,
  numberWrong: (option: string, text: string, allowed: string, example: string): string =>
    `${option} is "${text}". It must be ${allowed}; for example ${option} ${example}.`,
  choiceWrong: (option: string, text: string, choices: readonly string[], nearest: string | null): string =>
    `${option} is "${text}". It must be one of ${list(choices)}.${nearest === null ? "" : ` Did you mean ${nearest}?`}`,
  pairWrong: (option: string, text: string, form: string): string =>
    `${option} is "${text}". It must have the form ${form}.`,
  channelUnknown: (option: string, name: string, nearest: string | null, names: readonly string[]): string =>
    nearest === null
      ? `${option}: "${name}" is not a channel. Channels: ${list(names)}.`
      : `${option}: "${name}" is not a channel. Did you mean ${nearest}?`,
  pairTwice: (option: string, channel: string): string =>
    `${option} is given twice for ${channel}. Keep one.`,
  inputTwice: (): string => `"-" (standard input) can be read only once. Name it once.`,
  delimiterLong: (text: string): string =>
    `--delimiter is "${text}". It must be one character, or comma, semicolon, tab, pipe or space.`,
  reportOfInput: (): string => `Standard input has no folder for a report. Name one: --report=FILE.html`,
  reportNeedsEquals: (page: string): string => `To name the report use "=": --report=${page}`,
  reportNotHtml: (path: string): string => `--report=${path} must end in .html.`,
  reportManyIntoOne: (path: string): string =>
    `--report=${path} is one file, but there are several logs. Name a folder: --report=FOLDER`,
  reportClash: (path: string): string =>
    `Two logs would write the same report ${path}. Check them one at a time.`,
  logTwice: (log: string): string => `${log} is named twice. Name it once.`,
  inputAsName: (): string => `"-" is not a name for a file. Name one, for example tern.json`,
};

export const inputSentences = {
  logMissing: (log: string): string => `There is no file ${log}. Check the name and the folder.`,
  logFolder: (log: string): string =>
    `${log} is a folder. Name the log files in it, for example ${log}/*.csv`,
  logUnreadable: (log: string, reason: string): string => `${log} cannot be read: ${reason}.`,
  logTooLarge: (log: string, megabytes: string, limit: string): string =>
    `${log} has ${megabytes} MB. The limit is ${limit} MB; split the log or log fewer rows a second.`,
  aircraftMissing: (file: string): string =>
    `There is no aircraft file ${file}. To start one: tallywatt new ${file}`,
  aircraftUnreadable: (file: string, reason: string): string =>
    `The aircraft file ${file} cannot be read: ${reason}.`,
  aircraftNotText: (file: string): string =>
    `The aircraft file ${file} is not UTF-8 text. Save it again as UTF-8, or start one: tallywatt new FILE`,
  ownBug: (what: string): string =>
    `tallywatt met a fault of its own: ${what}. Your files are unchanged. To see where, add --debug`,
  reading: (log: string, megabytes: string): string => `Reading ${log} (${megabytes} MB) …`,
  packageIncomplete: (what: string): string => `This installation lacks ${what}. Install the package again.`,
};

export const outputSentences = {
  notOurs: (path: string): string =>
    `${path} exists and was not written by tallywatt, so it stays. To replace it, add --force`,
  exists: (path: string): string => `${path} exists already, so it stays. To replace it, add --force`,
  cannotWrite: (path: string, reason: string, bytes: number): string =>
    `${path} cannot be written: ${reason} (${bytes} bytes are needed). What was there is unchanged.`,
  cannotLook: (path: string, reason: string): string => `${path} cannot be written: ${reason}.`,
  schemaStays: (name: string): string =>
    `${name} was not written by tallywatt, so it stays. To replace it, add --force`,
};

export const demoSentences = {
  season: (report: string, flights: number): string =>
    `${report}: the season of ${flights} flights and bench runs on one page, with a link to each`,
  line: (report: string, headline: string, notices: string): string => `${report}: ${headline} (${notices})`,
  done: (reports: number, folder: string, first: string): string =>
    `${reports} reports are in ${folder}. Open ${first} in a browser; everything in it is invented.`,
};
