/** The form in which names of dimensions and parts are compared: `Bore` and `bore` are one name. */
export const nameKey = (name: string): string => name.trim().toLowerCase();
