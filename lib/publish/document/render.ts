import type { DescriptionForm } from '#lib/episode/publish-schema';
import type { TextDocument } from '#lib/publish/document/document';
import { html } from '#lib/publish/document/html';
import { markdown } from '#lib/publish/document/markdown';
import { plainText } from '#lib/publish/document/plain';

const RENDERERS: Readonly<Record<DescriptionForm, (document: TextDocument) => string>> = {
  plain: plainText,
  markdown,
  html,
};

/** How long a text is: in code points, which limits are held against, and as some fields count. */
export interface TextLength {
  readonly codePoints: number;
  readonly utf16Units: number;
}

/** A document in a form, exactly as it is pasted. */
export function render(document: TextDocument, form: DescriptionForm): string {
  return RENDERERS[form](document);
}

/** @example textLength('🍳') // { codePoints: 1, utf16Units: 2 } */
export function textLength(text: string): TextLength {
  return { codePoints: [...text].length, utf16Units: text.length };
}
