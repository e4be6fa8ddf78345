/** What the service loads from node_modules at run time: native code, and packages that read files of their own. */
export const KEPT_OUTSIDE = ['better-sqlite3', 'pdfkit', 'bwip-js', 'source-sans', 'source-serif'] as const;
