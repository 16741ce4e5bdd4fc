/** Headers of every answer. */
export const HEADERS = {
  "cache-control": "no-store",
  "x-content-type-options": "nosniff",
  "referrer-policy": "no-referrer",
  "cross-origin-opener-policy": "same-origin",
  "cross-origin-resource-policy": "same-origin",
  "x-frame-options": "DENY",
} as const;

/** For an answer that is data: a browser that shows it as a page runs nothing of it. */
export const DATA_POLICY = "default-src 'none'; frame-ancestors 'none'";

const META = /(<meta http-equiv="Content-Security-Policy" content=")([^"]*)(">)/;

export interface ServedPage {
  readonly text: string;
  readonly policy: string;
}

/** The page with a policy that lets it ask its own server; from disk it may ask nobody. Throws on a page without one. */
export function servedPage(page: string): ServedPage {
  const own = META.exec(page)?.[2];
  if (own === undefined) throw new Error("the page has no policy");
  const policy = `${own}; connect-src 'self'`;
  return {
    text: page.replace(META, (_, before: string, __, after: string) => before + policy + after),
    policy: `${policy}; frame-ancestors 'none'`,
  };
}
