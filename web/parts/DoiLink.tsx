/** A paper's DOI as a link to where it is kept; nothing when there is none. */
export function DoiLink({ doi }: { readonly doi: string }) {
  if (!doi) return null;
  return (
    <a href={`https://doi.org/${encodeURI(doi)}`} target="_blank" rel="noreferrer">
      doi:{doi}
    </a>
  );
}
