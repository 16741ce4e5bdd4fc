export { capital } from "./capital.ts";
export { nearestWord } from "./nearest.ts";
