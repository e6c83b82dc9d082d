/** Turns the pages of a long list. */
import { Button, Group } from '@mantine/core';
import type { Pages } from '../operations/usePages.ts';

export function PageTurner({ pages, next }: { readonly pages: Pages; readonly next: string | null }) {
  if (pages.isFirst && next === null) return null;
  return (
    <Group gap="sm">
      <Button variant="default" disabled={pages.isFirst} onClick={pages.goBack}>
        Back
      </Button>
      <Button variant="default" disabled={next === null} onClick={() => next !== null && pages.goOn(next)}>
        Next
      </Button>
    </Group>
  );
}
