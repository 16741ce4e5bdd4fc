import type { FlightCheck } from "../../flight/check/index.ts";
import type { LogBytes } from "../../log/reading/index.ts";
import { type CheckSetting, checkBytes } from "./checkOne.ts";
import { EXIT } from "./exitCodes.ts";
import { exitOfNotices } from "./noticeLines.ts";

/** One log to check and report: plain data where `bytes` is one array, so that another thread can take it. */
export interface CheckJob {
  /** Name of the log in the result. */
  readonly file: string;
  readonly bytes: LogBytes;
  readonly setting: CheckSetting;
  /** The release that the report names; null where no report is wanted. */
  readonly release: string | null;
}

/** What came of a job: `error` is a fault of ours. */
export type JobResult =
  | { readonly state: "checked"; readonly check: FlightCheck; readonly report: JobReport | null }
  | { readonly state: "failed"; readonly error: unknown };

/** A report that failed must not cost the result. */
export type JobReport = { readonly html: string } | { readonly error: unknown };

export async function checkedJob({ file, bytes, setting, release }: CheckJob): Promise<JobResult> {
  try {
    const rows = checkBytes(file, bytes, setting);
    const isReported = release !== null && exitOfNotices(rows.check.log.notices) === EXIT.done;
    const report = isReported ? await reported(rows, setting, release) : null;
    return { state: "checked", check: rows.check, report };
  } catch (error) {
    return { state: "failed", error };
  }
}

async function reported(
  checked: ReturnType<typeof checkBytes>,
  { aircraft: { facts, budget } }: CheckSetting,
  release: string,
): Promise<JobReport> {
  try {
    const { flightReport } = await import("../../show/report/index.ts");
    return { html: flightReport({ checked, facts, budget, release }) };
  } catch (error) {
    return { error };
  }
}
