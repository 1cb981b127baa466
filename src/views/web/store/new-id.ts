/** An opaque id for a new root or slot: a random UUID. */
export const newId = (): string => crypto.randomUUID();
