import { DEFAULTS, type DefaultPath, FULL_CELL_V, FULL_CELL_V_SOURCE } from "./defaults.ts";
import { NUMBER_KEYS, type NumberKey, type NumberKeyPath, TEXT_KEYS, type TextKeyPath } from "./keys.ts";
import { allKeyPaths, choicesAt } from "./schemaWalk.ts";

/** One key of the aircraft file as a form shows it. */
export interface AircraftKey {
  /** "pack.cells". */
  readonly path: string;
  readonly what: string;
  /** Null for a key that holds words. */
  readonly number: Required<Pick<NumberKey, "unit" | "low" | "high" | "isWhole">> | null;
  /** Words it may be; null where any will do. */
  readonly choices: readonly string[] | null;
  readonly example: number | string;
  /** What is taken when the key is absent, and where that comes from; null: then it is not known. */
  readonly fallback: { readonly value: number | string; readonly source: string } | null;
  readonly isRequired: boolean;
}

const REQUIRED = ["name", "pack.cells"];

/** Every key of the aircraft file that holds a number or words, in the order of the file. */
export function aircraftKeys(): readonly AircraftKey[] {
  return allKeyPaths().flatMap((path) => {
    const form = isNumberKey(path) ? numberKey(path) : isTextKey(path) ? textKey(path) : null;
    if (form === null) return [];
    return { path, ...form, fallback: fallbackOf(path), isRequired: REQUIRED.includes(path) };
  });
}

export function isFormKey(path: string): boolean {
  return isNumberKey(path) || isTextKey(path);
}

type OwnPart = Pick<AircraftKey, "what" | "number" | "choices" | "example">;

function numberKey(path: NumberKeyPath): OwnPart {
  const { what, unit, low, high, example, isWhole = false }: NumberKey = NUMBER_KEYS[path];
  return { what, number: { unit, low, high, isWhole }, choices: null, example };
}

function textKey(path: TextKeyPath): OwnPart {
  return { ...TEXT_KEYS[path], number: null, choices: choicesAt(path.split(".")) };
}

function fallbackOf(path: string): AircraftKey["fallback"] {
  if (path === "pack.fullCellV") return { value: FULL_CELL_V.lipo, source: FULL_CELL_V_SOURCE };
  return path in DEFAULTS ? DEFAULTS[path as DefaultPath] : null;
}

function isNumberKey(path: string): path is NumberKeyPath {
  return Object.hasOwn(NUMBER_KEYS, path) && !path.startsWith("readings");
}

function isTextKey(path: string): path is TextKeyPath {
  return Object.hasOwn(TEXT_KEYS, path);
}
