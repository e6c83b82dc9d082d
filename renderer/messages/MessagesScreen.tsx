/** Reminders as letters and e-mail drafts: looked at, made into files, and what came of each. Nothing is sent from here. */
import { useState } from 'react';
import { Screen } from '../kit/Screen.tsx';
import { LogPanel } from './LogPanel.tsx';
import { PreparePanel } from './PreparePanel.tsx';
import { WordingPanel } from './WordingPanel.tsx';

export function MessagesScreen() {
  const [made, setMade] = useState(0);
  return (
    <Screen title="Letters and e-mails">
      <PreparePanel key={made} onMade={() => setMade((count) => count + 1)} />
      <LogPanel />
      <WordingPanel />
    </Screen>
  );
}
