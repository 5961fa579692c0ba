export default function SeasonPage() {
  return <main>Scale &amp; Slate</main>;
}
