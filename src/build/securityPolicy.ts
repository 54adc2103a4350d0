import type { Plugin } from 'vite';

/**
 * What the built page may do: run its own scripts, styles and workers, show its own pictures and those it drew
 * itself, and nothing else. It cannot send anything anywhere, and no inline script or style runs.
 */
export const securityPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "worker-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/**
 * Writes the policy into the page as the first thing in its head, so that it holds for all that follows. At
 * build only: the development server needs inline scripts.
 */
export function securityPolicyPlugin(): Plugin {
  return {
    name: 'security-policy',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler: () => [
        {
          tag: 'meta',
          attrs: { 'http-equiv': 'Content-Security-Policy', content: securityPolicy },
          injectTo: 'head-prepend',
        },
      ],
    },
  };
}
