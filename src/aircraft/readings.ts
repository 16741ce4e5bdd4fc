import type { ChannelName } from "../base/channels/index.ts";

/** One remembered answer about logs with one header; the reader applies it when the signature is the same. */
export interface RememberedReading {
  readonly headerSignature: string;
  /** Channel to header text, or "#N" for the 1-based column. */
  readonly columns: Readonly<Partial<Record<ChannelName, string>>>;
  readonly units: Readonly<Partial<Record<ChannelName, string>>>;
  readonly rateHz: number | null;
  readonly decimalMark: "point" | "comma" | null;
  readonly dateOrder: "dmy" | "mdy" | "ymd" | null;
}
