/**
 * What the page may do: run and show what was served with it, and nothing else. 'connect-src' allows the demo
 * recordings and the offline copy, both from the same place. Pictures are made in the page (blob:).
 */
export const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob:",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');
