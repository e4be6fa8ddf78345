/** The header in which a page in a browser shows its key with every call. */
export const PAGE_KEY_HEADER = 'x-knowngood-page';
/** What stands before the key behind the `#` of the address with which a browser comes in. */
export const PAGE_KEY_MARK = 'page=';
