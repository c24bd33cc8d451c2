// Runs before the first paint, so that a page set to dark never flashes light.
try {
  const kept = localStorage.getItem('nearsherd.appearance');
  if (kept === 'light' || kept === 'dark') document.documentElement.dataset.appearance = kept;
} catch {
  // Storage may be refused; the system's own setting then holds.
}
