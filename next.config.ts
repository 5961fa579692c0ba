import type { NextConfig } from 'next';

const ownFolder = process.env.SLATE_BUILD_DIR ?? '.next';
const served = ownFolder === '.next';

const config: NextConfig = {
  reactStrictMode: true,
  poweredByHeader: false,
  // It draws with a binary of its own, which no bundle can hold.
  serverExternalPackages: ['@resvg/resvg-js'],
  // An episode file or bundle is brought in by a form (`LARGEST_BUNDLE`); the framework's own limits are 1 MB for an
  // action, and 10 MB for what goes by `proxy.ts`, past which it cuts off.
  experimental: { serverActions: { bodySizeLimit: '201mb' }, proxyClientMaxBodySize: '202mb' },
  // The browser tests build into a folder of their own, so that they never touch the one served.
  distDir: ownFolder,
  // Browsers ask for this name wherever they are not told of a mark: behind a redirect, or beside a plain text.
  rewrites: async () => [{ source: '/favicon.ico', destination: '/icon.svg' }],
  typescript: {
    // `npm test` checks types; a person who starts the program need not wait for it.
    ignoreBuildErrors: true,
    // Next adds the folder's types to its configuration, except to one that extends another.
    tsconfigPath: served ? 'tsconfig.json' : 'tests/check.tsconfig.json',
  },
};

export default config;
