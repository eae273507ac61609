// Makes the built page one that a device can install: its web manifest and icons beside it.
import { iconPng, iconSvg } from './app-icon.mjs';

/** @see Web Application Manifest, W3C; file handlers: Manifest Incubations, WICG. */
export const webManifest = {
  name: 'possession-fit',
  short_name: 'possession-fit',
  description:
    'Which rail work fits which track possession, with what float and handback margin, and what an overrun costs.',
  lang: 'en',
  id: './',
  start_url: './',
  scope: './',
  display: 'standalone',
  background_color: '#14171b',
  theme_color: '#14171b',
  icons: [
    { src: './icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' },
    { src: './icon-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
    { src: './icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
    { src: './icon-full-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
  ],
  file_handlers: [
    {
      action: './',
      accept: {
        'application/json': ['.json'],
        'text/csv': ['.csv'],
        'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet': ['.xlsx'],
      },
    },
  ],
  // A file opened from the device goes to the open desk: a shift that is on is not loaded anew.
  launch_handler: { client_mode: ['focus-existing', 'auto'] },
};

const link = (rel, href, more = {}) => ({
  tag: 'link',
  attrs: { rel, href, ...more },
  injectTo: 'head',
});

/** A plugin of Vite. It comes before the offline copy, which keeps these files too. */
export function installable() {
  return {
    name: 'installable',
    apply: 'build',
    transformIndexHtml: () => [
      link('icon', './icon.svg', { type: 'image/svg+xml' }),
      link('apple-touch-icon', './icon-192.png'),
      link('manifest', './app.webmanifest'),
    ],
    generateBundle() {
      const files = {
        'app.webmanifest': JSON.stringify(webManifest),
        'icon.svg': iconSvg(),
        'icon-192.png': iconPng(192),
        'icon-512.png': iconPng(512),
        'icon-full-512.png': iconPng(512, true),
      };
      for (const [fileName, source] of Object.entries(files))
        this.emitFile({ type: 'asset', fileName, source });
    },
  };
}
