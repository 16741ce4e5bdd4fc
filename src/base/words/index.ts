export { nearestWord } from "./nearest.ts";
