/** A finding drawn beside what it is taken for, each with its words; nothing for findings that are not drawn. */
import { isFindingId } from "../../../../knowledge/index.ts";
import { drawingWords } from "../../../words/index.ts";
import { drawings, figures } from "./drawings.ts";
import "./drawings.css";

export default function FindingDrawing({ finding }: { readonly finding: string }) {
  const strip = isFindingId(finding) ? drawings[finding] : undefined;
  if (!strip) return null;
  const say = drawingWords;
  return (
    <ul className="drawings" aria-label={say.strip}>
      {strip.map((name, index) => {
        const Drawing = figures[name];
        return (
          <li key={name} className={index === 0 ? "this" : undefined}>
            <Drawing />
            {say.figures[name]}
          </li>
        );
      })}
    </ul>
  );
}
