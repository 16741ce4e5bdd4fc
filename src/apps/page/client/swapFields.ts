import type { AircraftValues } from "../../../aircraft/index.ts";
import type { SwapWork } from "../messages.ts";

/** What may be changed before buying it: where it stands in the aircraft file, its unit, and one step. */
export interface SwapKey {
  readonly name: keyof SwapWork["change"] | keyof SwapWork["conditions"];
  readonly label: string;
  readonly path: string;
  readonly unit: string;
  readonly step: number;
}

const key = (name: SwapKey["name"], label: string, path: string, unit: string, step: number): SwapKey => ({
  name,
  label,
  path,
  unit,
  step,
});

export const SWAP_KEYS: readonly SwapKey[] = [
  key("diameterIn", "Propeller diameter", "propeller.diameterIn", "inch", 1),
  key("pitchIn", "Propeller pitch", "propeller.pitchIn", "inch", 1),
  key("blades", "Blades", "propeller.blades", "", 1),
  key("cells", "Cells in series", "pack.cells", "", 1),
  key("capacityMah", "Capacity", "pack.capacityMah", "mAh", 100),
  key("ambientC", "Air temperature", "field.ambientC", "degC", 5),
  key("elevationM", "Height above the sea", "field.elevationM", "m", 100),
  key("reservePct", "Reserve to land with", "reservePct", "%", 5),
];

/** The change and the conditions of what was stepped to; what stands as fitted is null. */
export function swapOf(
  chosen: ReadonlyMap<SwapKey["name"], number | null>,
): Pick<SwapWork, "change" | "conditions"> {
  const of = (name: SwapKey["name"]): number | null => chosen.get(name) ?? null;
  return {
    change: {
      diameterIn: of("diameterIn"),
      pitchIn: of("pitchIn"),
      blades: of("blades"),
      cells: of("cells"),
      capacityMah: of("capacityMah"),
    },
    conditions: { ambientC: of("ambientC"), elevationM: of("elevationM"), reservePct: of("reservePct") },
  };
}

/** The fitted number of a key: of the file, else what is taken when it is absent; null when neither is known. */
export function fittedOf(
  { path }: SwapKey,
  values: AircraftValues,
  fallbacks: ReadonlyMap<string, number | string>,
): number | null {
  const value = values[path] ?? fallbacks.get(path);
  return typeof value === "number" ? value : null;
}
