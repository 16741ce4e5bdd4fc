import { expect, it } from "vitest";
import { withScratch, withSingleScratch } from "../../../src/base/statistics/index.ts";

it("lends one array after the other call, as long as asked for, and another one to a call inside a call", () => {
  const first = withScratch(5, (values) => values.fill(7));
  const second = withScratch(3, (values) => values);
  expect([first.length, second.length]).toEqual([5, 3]);
  expect(second.buffer).toBe(first.buffer);
  withScratch(4, (outer) => {
    outer.fill(1);
    withScratch(4, (inner) => inner.fill(2));
    withSingleScratch(9, (inner) => inner.fill(3));
    expect([...outer]).toEqual([1, 1, 1, 1]);
  });
});

it("lends it again after work that threw", () => {
  const before = withScratch(2, (values) => values.buffer);
  expect(() =>
    withScratch(2, () => {
      throw new Error("work");
    }),
  ).toThrow("work");
  expect(withScratch(2, (values) => values.buffer)).toBe(before);
  expect(withSingleScratch(5, (values) => values.length)).toBe(5);
});
