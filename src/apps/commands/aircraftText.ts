import { resolve } from "node:path";
import type { Notice } from "../../base/notices/index.ts";
import { reasonOf } from "./failure.ts";
import type { Io } from "./io.ts";
import { inputSentences } from "./sentences.ts";

export interface UnusableAircraft {
  readonly state: "unusable";
  readonly notices: readonly Notice[];
}

/** The text of an aircraft file, or why there is none. */
export function aircraftText(file: string, io: Io): string | UnusableAircraft {
  const bytes = bytesOf(file, io);
  if (typeof bytes === "string") return refused("aircraft-unreadable", bytes);
  return textOf(bytes) ?? refused("aircraft-not-text", inputSentences.aircraftNotText(file));
}

/** The bytes, or the sentence that says why there are none. */
function bytesOf(file: string, io: Io): Uint8Array | string {
  try {
    return io.files.read(resolve(io.workFolder, file)) ?? inputSentences.aircraftMissing(file);
  } catch (error) {
    return inputSentences.aircraftUnreadable(file, reasonOf(error));
  }
}

function textOf(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return null;
  }
}

function refused(code: string, text: string): UnusableAircraft {
  return { state: "unusable", notices: [{ code, severity: "refusal", text }] };
}
