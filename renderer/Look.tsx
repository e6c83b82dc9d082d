/** Day, night, high contrast, or as the computer is set: chosen per device, since it depends on the room and the eyes. */
import { localStorageColorSchemeManager, MantineProvider, useMantineColorScheme } from '@mantine/core';
import { createContext, type ReactNode, useCallback, useContext, useMemo, useState } from 'react';
import { highContrastVariables, paletteVariables } from './paletteVariables.ts';
import { theme } from './theme.ts';

export const LOOKS = ['computer', 'day', 'night', 'high-contrast'] as const;
export type LookName = (typeof LOOKS)[number];

const CONTRAST_KEY = 'lightoff.contrast';
const schemeManager = localStorageColorSchemeManager({ key: 'lightoff.scheme' });
const ContrastContext = createContext<{ isHigh: boolean; setHigh: (isHigh: boolean) => void } | null>(null);

export function Look({ children }: { readonly children: ReactNode }) {
  const [isHigh, setIsHigh] = useState(() => window.localStorage.getItem(CONTRAST_KEY) === 'high');
  const setHigh = useCallback((wanted: boolean) => {
    window.localStorage.setItem(CONTRAST_KEY, wanted ? 'high' : 'usual');
    setIsHigh(wanted);
  }, []);
  const contrast = useMemo(() => ({ isHigh, setHigh }), [isHigh, setHigh]);
  return (
    <ContrastContext value={contrast}>
      <MantineProvider
        theme={theme}
        colorSchemeManager={schemeManager}
        defaultColorScheme="auto"
        cssVariablesResolver={isHigh ? highContrastVariables : paletteVariables}
      >
        {children}
      </MantineProvider>
    </ContrastContext>
  );
}

export function useLook(): { readonly look: LookName; readonly setLook: (look: LookName) => void } {
  const contrast = useContext(ContrastContext);
  if (contrast === null) throw new Error('useLook outside Look');
  const { colorScheme, setColorScheme } = useMantineColorScheme();
  const setLook = (look: LookName) => {
    contrast.setHigh(look === 'high-contrast');
    setColorScheme(look === 'computer' ? 'auto' : look === 'day' ? 'light' : 'dark');
  };
  if (contrast.isHigh) return { look: 'high-contrast', setLook };
  return { look: colorScheme === 'auto' ? 'computer' : colorScheme === 'light' ? 'day' : 'night', setLook };
}
