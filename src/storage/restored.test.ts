import { scratch } from "../../tests/faults/count.ts";
import { restoredContract } from "../../tests/laws/restored-contract.ts";
import { inFolder } from "./server.ts";

restoredContract(
  "from files into files",
  async () => inFolder(scratch("from")),
  async () => inFolder(scratch("into")),
);
