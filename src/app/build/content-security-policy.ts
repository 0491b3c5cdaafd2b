/** Puts the content security policy into the built page. Left out while developing: the dev server needs inline styles. */
import type { Plugin } from 'vite';
import { CONTENT_SECURITY_POLICY } from './policy.ts';

export function contentSecurityPolicy(): Plugin {
  return {
    name: 'perrev-content-security-policy',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: CONTENT_SECURITY_POLICY },
        injectTo: 'head-prepend',
      },
    ],
  };
}
