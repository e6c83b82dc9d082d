/** A notice that stands open against an appliance, said before everything else about it: what it asks for, and settling it. */
import { Stack } from '@mantine/core';
import type { ReactNode } from 'react';
import type { OpenNotice } from '../../domain/recalls/openNotices.ts';
import { capital } from '../kit/capital.ts';
import { Note } from '../kit/Note.tsx';
import { RouteLink } from '../RouteLink.tsx';
import { DOUBT_WORDS, noticeName } from './recallWords.ts';

export function OpenNoticeNote({
  notice,
  children,
}: {
  readonly notice: OpenNotice;
  /** What can be done about it here. */
  readonly children?: ReactNode;
}) {
  return (
    <Note
      tone={notice.mayFire ? 'plain' : 'ember'}
      title={`Not settled: ${noticeName(notice)}`}
      action={
        <RouteLink to="recall" params={{ recallId: notice.recallId }}>
          The notice
        </RouteLink>
      }
    >
      <Stack gap="xs">
        <span>
          {notice.source}: {notice.whatToDo}
        </span>
        <NoticeDoubts notice={notice} />
        <span>
          {notice.mayFire ? 'It may run meanwhile.' : 'It must not fire until this is settled with what was found.'}{' '}
          {refusedWords(notice)}
        </span>
        {children}
      </Stack>
    </Note>
  );
}

export function NoticeDoubts({ notice }: { readonly notice: OpenNotice }) {
  if (notice.doubts.length === 0) return null;
  return <span>Whether it is meant: {capital(notice.doubts.map((doubt) => DOUBT_WORDS[doubt]).join('; '))}.</span>;
}

export function refusedWords({ isRefused }: OpenNotice): string {
  return isRefused ? 'The owner does not want it done.' : '';
}
