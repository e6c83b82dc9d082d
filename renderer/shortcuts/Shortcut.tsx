/** A key that works while this is on screen: for what is there only sometimes. */
import { useShortcut } from './Shortcuts.tsx';

export function Shortcut({
  keys,
  label,
  onPress,
}: {
  readonly keys: string;
  readonly label: string;
  readonly onPress: () => void;
}) {
  useShortcut(keys, label, onPress);
  return null;
}
