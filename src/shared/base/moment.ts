const MOMENT = /^(-?\d{4,6})-(\d{2})-(\d{2})T(\d{2}):(\d{2})(?::(\d{2}(?:\.\d+)?))?Z$/;

/** Days of the Gregorian calendar from 1970-01-01 (Howard Hinnant, days_from_civil): the year begins in March, so that leap days come last. */
function daysFrom(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}

/**
 * Seconds from 1970-01-01T00:00Z to a moment in ISO 8601 and UTC, as records hold it. Leap seconds are not counted.
 *
 * @returns undefined for any other text
 */
export function secondsOfMoment(text: string): number | undefined {
  const found = MOMENT.exec(text);
  if (!found) return undefined;
  const [year, month, day, hour, minute] = found.slice(1, 6).map(Number) as [number, number, number, number, number];
  const second = Number(found[6] ?? 0);
  if (month < 1 || month > 12 || day < 1 || day > 31 || hour > 23 || minute > 59 || second >= 60) return undefined;
  return 86_400 * daysFrom(year, month, day) + 3600 * hour + 60 * minute + second;
}

/** The same in hours. */
export function hoursOfMoment(text: string): number | undefined {
  const seconds = secondsOfMoment(text);
  return seconds === undefined ? undefined : seconds / 3600;
}

const two = (value: number): string => String(value).padStart(2, '0');

/** The moment so many hours after 1970-01-01T00:00Z, to the minute: `2026-05-02T09:30:00Z`. */
export function momentOfHours(hours: number): string {
  const minutes = Math.round(hours * 60);
  const days = Math.floor(minutes / 1440);
  const rest = minutes - days * 1440;
  const shifted = days + 719_468;
  const era = Math.floor(shifted / 146_097);
  const dayOfEra = shifted - era * 146_097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const month = Math.floor((5 * dayOfYear + 2) / 153);
  const day = dayOfYear - Math.floor((153 * month + 2) / 5) + 1;
  const calendar = month < 10 ? month + 3 : month - 9;
  const year = yearOfEra + era * 400 + (calendar <= 2 ? 1 : 0);
  return `${String(year).padStart(4, '0')}-${two(calendar)}-${two(day)}T${two(Math.floor(rest / 60))}:${two(rest % 60)}:00Z`;
}
