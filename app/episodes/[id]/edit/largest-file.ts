/** As many bytes as the longest text takes in UTF-16, with its mark. */
export const LARGEST_FILE = 16_000_002;
