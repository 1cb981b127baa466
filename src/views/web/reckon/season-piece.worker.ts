/** Reckons pieces of a season for the worker that compares choices. Its file alone may compile the kernel. */
import { dynamics } from "../../../reasoning/index.ts";

const answer = dynamics.pieceAnswers();

self.onmessage = ({ data }: MessageEvent<dynamics.PieceQuestion>) => {
  const said = answer(data);
  if (said !== null) self.postMessage(said);
};
