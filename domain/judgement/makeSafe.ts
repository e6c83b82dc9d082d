/** How to make safe, in order. The licensed person, the maker's manual and the local code decide beyond these lines. */

export const BURNER_OFF: readonly string[] = [
  'Burner off at the appliance’s switch; shut the gas valve at the appliance.',
  'Ventilate the room and read CO in it.',
  'Label the appliance: not to be used.',
  'Tell the occupant and the owner, in writing.',
  'Only a licensed person puts it back into use, when the cause is found.',
];

export const VENTILATE: readonly string[] = [
  'Stop every burner; open doors and windows.',
  'Stay out of the room until CO has fallen; then find the source.',
  'Shut the gas valve at the appliance that makes it and label it.',
  'Tell the occupant and the owner, in writing.',
  'Only a licensed person puts it back into use, when the cause is found.',
];

export const EVERYBODY_OUT: readonly string[] = [
  'Everybody out, now. Leave doors open on the way.',
  'Touch no switch.',
  'Call the emergency number from outside.',
  'Nobody goes back in before the emergency service says so.',
  'Write it down afterwards.',
];

export const HOT_TAP: readonly string[] = [
  'Shut the hot tap and warn everybody in the house.',
  'Turn the mixing valve or the hot-water setting down; let the water run cold first.',
  'Read again at the tap before leaving.',
];

export const PRESSURE_HIGH: readonly string[] = [
  'Burner off; keep clear of the relief valve’s outlet.',
  'Close the fill valve. Let the system cool before water is let out.',
  'Find the cause: vessel, pre-charge, fill valve, volume.',
];
