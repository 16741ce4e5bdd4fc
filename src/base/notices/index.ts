export { firstLines, LISTED_LINES, linesText, type Notice, type Severity } from "./notice.ts";
