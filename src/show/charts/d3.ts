/** The only door to d3: pure scale, shape and array functions that run in Node and in a browser. */
export { bisector, line, ticks } from "d3";
