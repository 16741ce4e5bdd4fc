export { capital, uncapital } from "./capital.ts";
export { nearestWord } from "./nearest.ts";
