import type { NextConfig } from 'next';

const config: NextConfig = {
  reactStrictMode: true,
  poweredByHeader: false,
  // The browser tests build into a folder of their own, so that they never touch the one being served.
  distDir: process.env.SLATE_BUILD_DIR ?? '.next',
};

export default config;
