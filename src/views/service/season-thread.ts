/** A thread that reckons pieces of a season: told the question first, then one piece after the other. */
import { parentPort } from "node:worker_threads";
import { dynamics } from "../../reasoning/index.ts";

const answer = dynamics.pieceAnswers();

parentPort?.on("message", (asked: dynamics.PieceQuestion) => {
  const said = answer(asked);
  if (said !== null) parentPort?.postMessage(said);
});
