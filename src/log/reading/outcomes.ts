import type { Notice } from "../../base/notices/index.ts";
import type { NotRead } from "./contract.ts";

/** Everything of an unread log but what stopped it. */
export type UnreadLog = Omit<NotRead, "state" | "notices">;

const NOTHING_KNOWN: UnreadLog = {
  dialect: null,
  headerSignature: null,
  columns: [],
  dataLines: 0,
  preview: [],
};

/** A log that is refused before anything of it is known. */
export function refusal(code: string, text: string): NotRead {
  return notRead(NOTHING_KNOWN, [{ code, severity: "refusal", text }]);
}

/** A question that comes before anything of the log is known. */
export function question(code: string, text: string, options: readonly string[]): NotRead {
  return notRead(NOTHING_KNOWN, [{ code, severity: "question", text, options }]);
}

/** A log that stops here; a refusal among the notices outweighs the questions. */
export function notRead(known: UnreadLog, notices: readonly Notice[]): NotRead {
  const isRefusal = notices.some((notice) => notice.severity === "refusal");
  return { ...known, state: isRefusal ? "refusal" : "question", notices };
}
