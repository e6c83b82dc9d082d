/** The technician's startup run. */
export function RunScreen(_props: {
  readonly visitId: string;
  readonly runId: string;
  readonly stepKey: string | null;
}) {
  return <main id="main" />;
}
