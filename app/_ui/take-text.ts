/** What became of a text that was to be copied: `selected` where the person's own keys copy it. */
export type Taken = 'copied' | 'selected' | 'neither';

/**
 * Puts a text into the clipboard; where the browser won't (no secure connection, no leave), it selects the text.
 * @param shownIn id of the element that shows the text, a field or not
 * @returns `neither` where that is not to be seen
 */
export async function takeText(text: string, shownIn: string): Promise<Taken> {
  try {
    await navigator.clipboard.writeText(text);
    return 'copied';
  } catch {
    const element = document.getElementById(shownIn);
    return element && select(element) ? 'selected' : 'neither';
  }
}

/** Selects all that an element shows, or what is typed in a field; whether there is anything of it. */
function select(element: HTMLElement): boolean {
  if (element instanceof HTMLTextAreaElement || element instanceof HTMLInputElement) {
    element.focus();
    element.select();
    return element.value !== '';
  }
  const selection = window.getSelection();
  selection?.selectAllChildren(element);
  return selection !== null && selection.toString() !== '';
}
