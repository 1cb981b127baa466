/** The other forms of a picture, at the right of its sentence: a table in its place, an SVG file, a CSV file. */
import { words } from "../words.ts";

interface Props {
  /** The sentence of the picture. */
  readonly picture: string;
  readonly isTable: boolean;
  readonly turn: () => void;
  readonly saveSvg: () => void;
  readonly saveCsv: () => void;
}

export function Twins({ picture, isTable, turn, saveSvg, saveCsv }: Props) {
  const say = words.shell;
  return (
    // biome-ignore lint/a11y/useSemanticElements: three buttons of one picture are no fieldset
    <span className="twins" role="group" aria-label={say.twins({ picture })}>
      <button type="button" className="act" aria-pressed={isTable} onClick={turn}>
        {isTable ? say.picture : say.table}
      </button>
      <button type="button" className="act" onClick={saveSvg}>
        {say.saveSvg}
      </button>
      <button type="button" className="act" onClick={saveCsv}>
        {say.saveCsv}
      </button>
    </span>
  );
}
