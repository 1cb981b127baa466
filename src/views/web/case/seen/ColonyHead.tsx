/** What all codes begin with stands in the corner only; the column has what tells them apart. */
export function ColonyHead({
  code,
  all,
}: {
  readonly code: string;
  readonly all: readonly { readonly code: string }[];
}) {
  const cut = code.lastIndexOf("-") + 1;
  const shared = cut > 0 && all.every((colony) => colony.code.startsWith(code.slice(0, cut)));
  return (
    <abbr className="c" title={code}>
      {shared ? code.slice(cut) : code}
    </abbr>
  );
}
