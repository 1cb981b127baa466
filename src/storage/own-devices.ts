/** Devices that are no member's: that of the service, and those that a tool at the machine writes by. */

/** The device of the service: no member's device may have its name. */
export const serviceDevice = "service";

/** Stands as author for someone at the machine itself, where no member is named. */
export const atTheMachine = "machine";

const tools = ["import", "settling"] as const;

/** A new device for what one run of a tool writes; no member may take it over. */
export const toolDevice = (tool: (typeof tools)[number], id: string): string => `${tool}-${id}`;

/** Whether a tool at the machine wrote by it. */
export const isToolDevice = (device: string): boolean => tools.some((tool) => device.startsWith(`${tool}-`));
