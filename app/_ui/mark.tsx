/** The sign of the house: a clapper whose upper stick is the beam of a balance. */
export function Mark() {
  return (
    <svg
      viewBox="0 0 32 28"
      className="h-7 w-8"
      fill="none"
      stroke="currentColor"
      aria-hidden="true"
    >
      <path d="M2 14h22v12H2z" fill="currentColor" />
      <path d="M2 12L25 3" strokeWidth="4" strokeDasharray="4.5 2.2" />
      <path d="M27 2.5l-3.5 9h7z" strokeWidth="1.75" strokeLinejoin="round" />
    </svg>
  );
}
