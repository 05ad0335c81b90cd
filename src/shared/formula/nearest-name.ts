/** The known name most like `name`, or undefined when none is near. */
export function nearestName(name: string, names: Iterable<string>): string | undefined {
  void name;
  void names;
  return undefined;
}
