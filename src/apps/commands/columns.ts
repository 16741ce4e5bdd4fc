import { CHANNEL_NAMES, channelWords, isCellChannel, MOST_CELLS } from "../../base/channels/index.ts";
import type { Notice } from "../../base/notices/index.ts";
import { unitText } from "../../base/quantity/index.ts";
import {
  type ColumnChoice,
  type ColumnsDescription,
  type Dialect,
  describeColumns,
  type LogBytes,
  type ReadingOptions,
  readLog,
} from "../../log/reading/index.ts";
import type { Call, CommandDefinition } from "./commandDefinition.ts";
import type { ExitCode } from "./exitCodes.ts";
import type { Io } from "./io.ts";
import { logName, openLogBytes, shownLog } from "./logInput.ts";
import { exitOfNotices } from "./noticeLines.ts";
import { oneLine } from "./printable.ts";
import { READING_OPTIONS, readingOptions } from "./readingOptions.ts";
import { answeredWords, commandLine } from "./shellWord.ts";
import type { Talk } from "./talk.ts";
import { tellEach } from "./tellCheck.ts";

export const command: CommandDefinition = {
  operands: "<LOG>",
  about: "how each column of a log is read and why, and the options that would force it",
  examples: [
    {
      line: "tallywatt columns flight.csv",
      about: "prints each column, its channel, its unit and the reason",
    },
    { line: "tallywatt columns flight.csv --column current=#3 --json", about: "tries a choice, prints JSON" },
  ],
  options: [
    { flags: "--json", help: "the result as JSON on standard output, nothing else" },
    ...READING_OPTIONS,
  ],
  run,
};

/** How one log is read: the JSON result of `columns`. */
export interface ColumnsResult extends ColumnsDescription {
  readonly file: string;
}

async function run(call: Call, io: Io, talk: Talk): Promise<ExitCode> {
  const [log = ""] = call.operands;
  const options = readingOptions(call);
  const input = await openLogBytes(log, io, talk);
  const result =
    input.state === "bytes"
      ? columnsOf(logName(log), input.bytes, options)
      : notOpened(logName(log), { code: input.code, severity: "refusal", text: input.text });
  const retry = (option: string): string =>
    commandLine([call.name, log, ...answeredWords(call.optionWords, option)]);
  tellEach(shownLog(log), result.notices, retry, talk);
  if (call.has("json")) talk.data(JSON.stringify(result, null, 2));
  else if (result.columns.length > 0) talk.data(columnLines(shownLog(log), result).join("\n"));
  return exitOfNotices(result.notices);
}

function columnsOf(file: string, bytes: LogBytes, options: ReadingOptions): ColumnsResult {
  const { format, version, ...description } = describeColumns(readLog(bytes, options, []));
  return { format, version, file, ...description };
}

function notOpened(file: string, notice: Notice): ColumnsResult {
  return {
    format: "tallywatt/columns",
    version: 1,
    file,
    dialect: null,
    headerSignature: null,
    columns: [],
    notices: [notice],
  };
}

function columnLines(log: string, { dialect, columns, headerSignature }: ColumnsResult): readonly string[] {
  return [
    `${log}: ${columns.length} columns${dialect ? `, ${dialectWords(dialect)}` : ""}.`,
    ...columns.flatMap(linesOfColumn),
    ...(columns.some(({ channel }) => channel === null) ? [`CHANNEL is one of ${channelList()}.`] : []),
    ...(headerSignature === null
      ? []
      : [
          `To keep these choices, name this header as headerSignature under "readings" in the aircraft file: ${headerSignature}`,
        ]),
  ];
}

/** Every channel, the cells as a range. */
function channelList(): string {
  const names = CHANNEL_NAMES.filter((name) => !isCellChannel(name) || name === "cellVoltage1");
  return names.join(", ").replace("cellVoltage1", `cellVoltage1 to cellVoltage${MOST_CELLS}`);
}

function linesOfColumn({ channel, header, column, unit, why, options }: ColumnChoice): readonly string[] {
  const read =
    channel === null ? "left alone" : `${channelWords(channel)}${unit ? ` in ${unitText(unit)}` : ""}`;
  return [
    oneLine(`#${column} ${header === "" ? "(no header)" : header}: ${read}. ${why}`),
    ...(options.length === 0 ? [] : [`    to force: ${oneLine(options.join(" | "))}`]),
  ];
}

const DELIMITER_WORDS: Readonly<Record<string, string>> = {
  ",": "comma",
  ";": "semicolon",
  "\t": "tab",
  "|": "pipe",
  " ": "spaces",
};

function dialectWords({ encoding, delimiter, decimalMark, headerLine }: Dialect): string {
  const between = DELIMITER_WORDS[delimiter] ?? delimiter;
  const mark = decimalMark === "," ? "comma" : "point";
  return `between them ${between}, decimal ${mark}, ${encoding}, header in line ${headerLine}`;
}
