/** A key, or keys pressed one after the other, as they look on the keyboard. */
export function KeyHint({ keys }: { readonly keys: string }) {
  const [first = '', ...rest] = keys.split(' ');
  return (
    <>
      <kbd className="lo-key">{first}</kbd>
      {rest.length > 0 ? (
        <>
          {' then '}
          <KeyHint keys={rest.join(' ')} />
        </>
      ) : null}
    </>
  );
}
