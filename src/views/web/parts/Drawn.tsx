/** The drawing of a finding, fetched when it is first shown; nothing where there is none. */
import { lazy, Suspense } from "react";

const FindingDrawing = lazy(() => import("../pictures/findings/FindingDrawing.tsx"));

export const Drawn = ({ finding }: { readonly finding: string }) => (
  <div className="drawn">
    <Suspense fallback={null}>
      <FindingDrawing finding={finding} />
    </Suspense>
  </div>
);
