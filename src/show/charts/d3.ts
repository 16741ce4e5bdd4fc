/** The only door to d3: pure scale and array functions that run in Node and in a browser. */
export { bisector, ticks } from "d3";
