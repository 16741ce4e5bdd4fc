import type { Facts } from "../../aircraft/facts.ts";
import { isSameShape, shapeOf } from "./flownPropellers.ts";
import type { FlownPropeller, KnownParts } from "./knownParts.ts";

/** The logged fitting that a prediction leans on, and whether it is the very one asked about. */
export interface Reference {
  readonly flown: FlownPropeller;
  /** The same propeller, cells and capacity: what the flights showed holds as it stands. */
  readonly isSame: boolean;
  readonly facts: Facts;
}

/** The fitting asked about where it was logged, else the one logged most; null without logs. */
export function referenceOf(facts: Facts, known: KnownParts): Reference | null {
  const shape = shapeOf(facts);
  const own = known.flown.find((one) => isSameShape(one.shape, shape));
  const flown = own ?? known.flown[0];
  if (flown === undefined || flown.shape === null) return null;
  const { pack } = known;
  const isSamePack =
    pack === null || (pack.cells === facts.pack.cells && pack.capacityMah === facts.pack.capacityMah);
  return { flown, isSame: own !== undefined && isSamePack, facts: asLogged(facts, flown.shape, pack) };
}

function asLogged(
  facts: Facts,
  shape: NonNullable<FlownPropeller["shape"]>,
  pack: KnownParts["pack"],
): Facts {
  const { cells, capacityMah } = pack ?? facts.pack;
  return {
    ...facts,
    propeller: { ...facts.propeller, ...shape },
    pack: { ...facts.pack, cells, capacityMah },
  };
}
