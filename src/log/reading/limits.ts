/** Largest log that is read, bytes. A row of 12 columns has about 70: 10,000 s at 500 Hz are 350 MB. */
export const MOST_BYTES = 500_000_000;
/** Longest line, characters. */
export const LONGEST_LINE = 4 * 1024 * 1024;
export const MOST_COLUMNS = 5000;
export const MOST_ROWS = 6_000_000;
/** Rows times columns: eight bytes each in memory. */
export const MOST_TABLE_CELLS = 80_000_000;
/** Characters of a cell or header that a sentence quotes. */
export const QUOTED_CHARACTERS = 40;
/** A cell longer than this is a comment and is pointed out. */
export const LONG_CELL = 10_000;
/** Lines that a quoted cell may span before its quote counts as never closed. */
export const MOST_LINES_OF_A_CELL = 20;
/** Lines from the start of the file that decide delimiter and header; numbers are never judged from them. */
export const HEAD_LINES = 1000;
/** Characters of these lines, so that a file of very long lines is cut up only once. */
export const HEAD_CHARACTERS = 1 << 20;
/** Rows of the preview beside a question. */
export const PREVIEW_ROWS = 8;
