/** How many notices are not settled, those that keep the boiler off apart from those that only inform: nothing when none. */
import { type OpenNotice, stoppingNotices } from '../../domain/recalls/openNotices.ts';

export function NoticeCount({ of }: { readonly of: readonly OpenNotice[] }) {
  const stops = stoppingNotices(of).length;
  const informs = of.length - stops;
  return (
    <>
      {stops === 0 ? null : (
        <span className="lo-verdict" data-tone="stop">
          {stops === 1 ? 'notice not settled' : `${stops} notices not settled`}
        </span>
      )}
      {informs === 0 ? null : (
        <span className="lo-verdict" data-tone="doubt">
          {informs === 1 ? 'a notice to see to' : `${informs} notices to see to`}
        </span>
      )}
    </>
  );
}
