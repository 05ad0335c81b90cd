/** The memory of all number arrays in an answer: it is handed over instead of being copied. */
export function transferOf(value: unknown): readonly ArrayBuffer[] {
  const found = new Set<ArrayBuffer>();
  const look = (one: unknown) => {
    if (ArrayBuffer.isView(one)) {
      if (one.buffer instanceof ArrayBuffer) found.add(one.buffer);
    } else if (typeof one === 'object' && one !== null && !Array.isArray(one)) {
      for (const inner of Object.values(one)) look(inner);
    }
  };
  look(value);
  return [...found];
}
