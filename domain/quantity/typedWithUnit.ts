/** What was typed, with the unit of the box unless the hand has written a unit of its own. */
export function typedWithUnit(typedText: string, unit: string | null): string {
  const text = typedText.trim();
  const saysUnit = /[\p{L}%°]/u.test(text);
  return unit === null || unit === '' || saysUnit ? text : `${text} ${unit}`;
}
