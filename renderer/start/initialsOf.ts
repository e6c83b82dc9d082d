/** `Dana Ruiz Ortega` → `DRO`: a suggestion, as people sign on paper. */
export function initialsOf(name: string): string {
  return name
    .trim()
    .split(/[\s-]+/)
    .filter(Boolean)
    .slice(0, 3)
    .map((word) => word.charAt(0).toLocaleUpperCase())
    .join('');
}
