import { bisector as d3Bisector } from "./d3.ts";

/** Places in a sorted list, by a number of each item. */
export interface Bisector<Item> {
  /** First place whose number is not below `value`. */
  readonly left: (list: ArrayLike<Item>, value: number) => number;
  /** Place whose number is nearest to `value`. */
  readonly center: (list: ArrayLike<Item>, value: number) => number;
}

/** The library's bisector under a type of our own: the package's types name no other package. */
export const bisector: <Item>(numberOf: (item: Item) => number) => Bisector<Item> = d3Bisector;
