import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import next from 'eslint-config-next';
import typescript from 'eslint-config-next/typescript';
import jsxA11y from 'eslint-plugin-jsx-a11y';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const strictA11y = Object.fromEntries(Object.entries(jsxA11y.flatConfigs.strict.rules));

const config = [
  {
    ignores: [
      'node_modules/**',
      '.next/**',
      '.next-test/**',
      '.data/**',
      '.cache/**',
      'prisma/generated/**',
      'next-env.d.ts',
    ],
  },
  ...next,
  ...typescript,
  { files: ['**/*.tsx'], rules: strictA11y },
  {
    files: ['**/*.{ts,tsx}'],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: root } },
    rules: {
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-misused-promises': 'error',
      '@typescript-eslint/no-non-null-assertion': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-import-type-side-effects': 'error',
      '@typescript-eslint/no-unused-vars': [
        'error',
        { argsIgnorePattern: '^_', varsIgnorePattern: '^_' },
      ],
    },
  },
  {
    files: ['**/*.cjs'],
    rules: { '@typescript-eslint/no-require-imports': 'off' },
  },
];

export default config;
