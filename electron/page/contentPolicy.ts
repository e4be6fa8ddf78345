/**
 * SHA-256 of the one style element react-aria puts into the page (touch behaviour of pressable things).
 * A test works it out anew from the installed package, so an upgrade that changes the text is noticed.
 */
export const REACT_ARIA_STYLE = "'sha256-38RhXrc7EdReTKsOm23ZPOCUgniTUUcjky8QOOrQx6o='";

/** What our own page may load and do: its own files, nothing inline, nothing from elsewhere. */
export const CONTENT_POLICY = [
  "default-src 'self'",
  "script-src 'self'",
  "connect-src 'self'",
  "img-src 'self' data: blob:",
  "media-src 'self' blob:",
  `style-src 'self' ${REACT_ARIA_STYLE}`,
  "style-src-attr 'unsafe-inline'",
  "object-src 'none'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
  "form-action 'none'",
].join('; ');

/** Sent with every answer of the page, in the window and over loopback alike. */
export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': CONTENT_POLICY,
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(self), microphone=(), geolocation=(), display-capture=(), usb=(), serial=(), hid=()',
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
};
