/** Processes that work on SQLite files, killed at any instant. */
import { killedBackups } from "../laws/killed-backups-contract.ts";
import { killedPushes } from "../laws/killed-pushes-contract.ts";
import { killedUploads } from "../laws/killed-uploads-contract.ts";
import { folderPlace } from "./place.ts";

const onSqlite = { name: "SQLite", make: folderPlace, oldest: "sqlite-shape-1.sql", part: 1 } as const;
killedPushes(onSqlite);
killedBackups(onSqlite);
killedUploads(onSqlite);
