/** Which knowledge this is. */

/** Version of the knowledge, by date: year and number within the year. */
export const knowledgeVersion = "2026.1";
