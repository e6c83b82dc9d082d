/** Who is working: a name and a PIN. Made for a shared laptop, quick to hand over. */
import { Button, Group, Stack } from '@mantine/core';
import { type FormEvent, useEffect, useRef, useState } from 'react';
import type { Person } from '../../electron/contract/app.ts';
import { PinInput } from '../form/PinInput.tsx';
import { BrandMark } from '../kit/BrandMark.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { roleWords } from '../kit/errorWords.ts';
import { Note } from '../kit/Note.tsx';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { DEMO_PIN } from './demoPin.ts';
import { dropSignInNotice, readSignInNotice } from './signInNotice.ts';

const LAST_PERSON_KEY = 'lightoff.last-person';

export function SignInScreen() {
  const { people, company, isDemo } = useAppStatus();
  const [staffId, setStaffId] = useState(() => {
    const last = window.localStorage.getItem(LAST_PERSON_KEY);
    return people.find((person) => person.staffId === last)?.staffId ?? people[0]?.staffId ?? null;
  });
  // Picked again is picked: the keyboard goes to the PIN each time.
  const [picks, setPicks] = useState(0);
  const [notice] = useState(readSignInNotice);
  const chosen = people.find((person) => person.staffId === staffId) ?? null;
  return (
    <Stack gap="lg">
      <Group gap="sm">
        <BrandMark side={44} />
        <div>
          <h1>Who is working?</h1>
          <div className="lo-faint">
            {company?.name}
            {isDemo ? ` (demo: every PIN is ${DEMO_PIN})` : ''}
          </div>
        </div>
      </Group>
      {notice === null ? null : (
        <Note tone="fir" isSpoken>
          {notice}
        </Note>
      )}
      <fieldset aria-label="People" className="lo-people">
        {people.map((person) => (
          <button
            key={person.staffId}
            type="button"
            className="lo-person"
            aria-pressed={person.staffId === staffId}
            onClick={() => {
              setStaffId(person.staffId);
              setPicks((count) => count + 1);
            }}
          >
            <strong>{person.name}</strong>
            <span className="lo-faint">{person.roles.map(roleWords).join(', ')}</span>
          </button>
        ))}
      </fieldset>
      {chosen ? <PinForm key={`${chosen.staffId} ${picks}`} person={chosen} /> : null}
    </Stack>
  );
}

function PinForm({ person }: { readonly person: Person }) {
  const signIn = useAct('session.signIn');
  const [pin, setPin] = useState('');
  const [waitS, setWaitS] = useState(0);
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => input.current?.focus(), []);
  useEffect(() => {
    if (waitS <= 0) return;
    const timer = setTimeout(() => setWaitS((left) => left - 1), 1000);
    return () => clearTimeout(timer);
  }, [waitS]);

  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const reply = await signIn.act({ staffId: person.staffId, pin });
    if (reply.ok) {
      window.localStorage.setItem(LAST_PERSON_KEY, person.staffId);
      dropSignInNotice();
      return;
    }
    setPin('');
    input.current?.focus();
    if (reply.error.code === 'wrong-pin') setWaitS(Math.ceil(reply.error.data.waitS));
  };
  const isWaiting = waitS > 0;
  return (
    <form onSubmit={(event) => void submit(event)}>
      <Stack gap="sm" maw="20rem">
        <PinInput ref={input} label={`PIN of ${person.name}`} value={pin} onChange={setPin} />
        <ErrorText error={signIn.error} />
        <Button type="submit" loading={signIn.isBusy} disabled={pin.length < 4 || isWaiting}>
          {isWaiting ? `Wait ${waitS} s` : 'Sign in'}
        </Button>
      </Stack>
    </form>
  );
}
