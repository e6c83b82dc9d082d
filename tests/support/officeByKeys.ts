/** The office work before a startup, typed into the app: firm, licence, analyser, customer, site, gas, appliance, booking. */
import { READINESS_ITEMS } from '../../domain/procedure/readiness.ts';
import type { KeyboardHands } from './keyboardHands.ts';
import { COMPANY, PIN } from './officeScenario.ts';

export const OWNER = 'Maren Oduya';
export const TECHNICIAN = 'Tobias Reyle';
export const PLANNED_ON = '3 Mar 2026';

export async function setUpFirmByKeys(hands: KeyboardHands): Promise<void> {
  await heading(hands, 'Lightoff');
  await hands.fill('Company', COMPANY.name);
  await hands.fill('Company licence number', COMPANY.licenceNumber ?? '');
  await hands.fill('Phone', COMPANY.phone ?? '');
  await hands.fill('E-mail', COMPANY.email ?? '');
  await hands.fill('Street and number', COMPANY.street ?? '');
  await hands.fill('Postcode', COMPANY.postcode ?? '');
  await hands.fill('City', COMPANY.city ?? '');
  await hands.choose('Country', 'Canada');
  await hands.fill('Time zone', COMPANY.timeZone);
  await hands.fill('Gas emergency number', COMPANY.emergencyNumber ?? '');
  await hands.fill('Name', OWNER);
  await hands.fill('PIN', PIN);
  await tick(hands, 'dispatcher');
  await hands.pressButton('Add a person');
  // The keyboard goes into the new row.
  await hands.page.locator('fieldset', { hasText: 'Person 2' }).locator('input:focus').waitFor();
  await hands.type(TECHNICIAN);
  hands.countField();
  await hands.fill('PIN', PIN);
  await hands.press('Enter');
  await heading(hands, 'Who is working?');
}

/** From the sign-in screen, where the last one or the first of the list is chosen already. */
export async function signInByKeys(hands: KeyboardHands, name: string): Promise<void> {
  await heading(hands, 'Who is working?');
  const isChosen = await hands.page.getByRole('button', { name, pressed: true }).count();
  if (isChosen === 0) await hands.pressButton(new RegExp(`^${name}`), 'Shift+Tab');
  await hands.page.getByLabel(`PIN of ${name}`).waitFor();
  await hands.page.locator('form input:focus').waitFor();
  await hands.type(PIN);
  hands.countField();
  await hands.press('Enter');
  await hands.page
    .getByRole('button', { name: 'Switch person' })
    .or(hands.page.locator('.run-header'))
    .first()
    .waitFor();
}

export async function switchPersonByKeys(hands: KeyboardHands, name: string): Promise<void> {
  await hands.press('Alt+w');
  await signInByKeys(hands, name);
}

export async function addLicenceByKeys(hands: KeyboardHands): Promise<void> {
  await goByKeys(hands, 'p', 'People');
  await hands.pressButton(TECHNICIAN);
  await heading(hands, TECHNICIAN);
  await hands.press('l');
  await hands.fill('Class', 'G2');
  await hands.fill('Number', 'G2-88120');
  await hands.fill('Issued by', 'Provincial gas board');
  await hands.fill('Valid in', 'Nova Scotia');
  await hands.fill('Valid from', '1 Jan 2025');
  await hands.fill('Last day', '31 Dec 2027');
  await hands.press('Enter');
  await hands.page.getByText('G2-88120, ').waitFor();
}

export async function addAnalyserByKeys(hands: KeyboardHands): Promise<void> {
  await goByKeys(hands, 'i', 'Instruments');
  await hands.press('n');
  await hands.fill('Called', 'Analyser 1');
  await hands.fill('Serial number', 'A-1001');
  await hands.fill(/^± % .*(O2|oxygen|O₂)/i, '0.3');
  await hands.fill(/^± ppm CO\b|^± ppm .*CO/i, '5');
  await hands.fill(/^and ± % of reading .*CO/i, '5');
  await hands.fill(/^± °C .*flue/i, '1');
  // With a pressure port: what its data sheet names, it may read.
  await hands.fill('Range up to, mbar Gas inlet pressure', '150');
  await hands.fill('Range up to, mbar Tightness test pressure', '150');
  await hands.fill(/^Range up to, mbar .*drop/i, '150');
  await hands.press('Enter');
  // The form has gone: whoever presses Tab while it goes begins at the top of the screen.
  await hands.page.getByRole('button', { name: /^Record calibration/ }).waitFor();
  await hands.pressButton(/^Record calibration/);
  await hands.page.getByLabel('Calibrated on').and(hands.page.locator(':focus')).waitFor();
  await hands.fill('Calibrated on', '10 Nov 2025');
  await hands.fill('Due again', '9 Nov 2026');
  await hands.fill('Certificate number', 'C-553');
  await hands.press('Enter');
  await hands.page.getByText('C-553').waitFor();
}

export async function addCustomerByKeys(hands: KeyboardHands): Promise<void> {
  await goByKeys(hands, 'c', 'Customers');
  await hands.press('n');
  await heading(hands, 'New customer');
  await hands.fill('Name', 'Lowri Kestrel');
  await hands.fill('Phone', '902 555 0111');
  await hands.fill('E-mail', 'lowri@kestrel.example');
  await hands.choose('Language', 'English');
  await hands.fill('Street and number', '9 Fathom Street');
  await hands.fill('Postcode', 'B4T 1A6');
  await hands.fill('City', 'Graven Bay');
  await hands.press('Enter');
  await heading(hands, 'Lowri Kestrel');
}

export async function addSiteByKeys(hands: KeyboardHands): Promise<void> {
  await hands.press('n');
  await heading(hands, 'New site');
  await hands.fill('Altitude above sea level', '40');
  await hands.fill('System height', '5');
  await hands.fill('System volume', '90');
  await hands.choose('How the volume is known', 'estimated');
  await hands.pressButton('Add an emitter');
  await hands.choose('Emitter 1', 'panel radiators');
  await hands.fill('Zone', 'whole house');
  await hands.fill('Rated output', '14');
  await hands.press('Enter');
  await heading(hands, '9 Fathom Street, Graven Bay');
}

export async function addGasByKeys(hands: KeyboardHands): Promise<void> {
  await hands.press('m');
  await heading(hands, 'Gas supply');
  await hands.fill('Meter number', 'M-77');
  await hands.fill('Test dial, one turn', '1 ft³');
  await hands.choose('Compensation', 'for temperature');
  await hands.fill('Capacity per hour', '7.1');
  await hands.fill('Regulator', 'one stage');
  await hands.fill('Nominal pressure after it', '17.4');
  await hands.fill('Heating value, gross', '38.0');
  await hands.fill('Source', 'utility, monthly mean');
  await hands.fill('As of', '1 Feb 2026');
  await hands.press('Enter');
  await heading(hands, '9 Fathom Street, Graven Bay');
}

export async function addApplianceByKeys(hands: KeyboardHands): Promise<void> {
  await hands.press('n');
  await heading(hands, 'New appliance');
  await hands.fill('Maker', 'Invented maker');
  await hands.fill('Model', 'T 24');
  await hands.fill('Serial number', 'TK204417');
  await hands.choose('Fuel on the plate', 'natural gas');
  await hands.fill('Rated input', '25');
  await hands.fill('Kind and material', 'polypropylene 80 mm');
  await hands.fill('Length', '4');
  await hands.fill('Elbows', '2');
  await hands.choose('Hidden in a shaft or wall', 'no');
  await hands.fill('Position', 'basement');
  await hands.fill('When installed', '26 Feb 2026');
  await hands.fill('How we know when installed', 'fitter');
  await hands.press('Enter');
  await heading(hands, 'Invented maker T 24');
}

export async function bookByKeys(hands: KeyboardHands): Promise<void> {
  await hands.press('n');
  await hands.press('Enter');
  await heading(hands, /^Startup: /);
  await hands.tabTo('Yes');
  for (const { key } of READINESS_ITEMS) {
    await hands.press('y');
    hands.countField();
    // The answer is on file before the next one is given.
    await hands.page
      .locator(`[aria-labelledby="ready-${key}"] input[value="yes"]:checked`)
      .waitFor({ state: 'attached' });
  }
  await hands.page.getByText('ready for a firm booking').waitFor();
  await hands.fill('Day', PLANNED_ON);
  await hands.fill('Arrive from', '9');
  await hands.fill('at the latest', '12');
  // It was “pencilled in” until the last answer above.
  await hands.page.getByLabel('How firm').and(hands.page.locator(':has(option[value="no"]:checked)')).waitFor();
  await hands.choose(`${TECHNICIAN}: part in the visit`, 'licensed');
  await hands.pressButton('Book it');
  await heading(hands, 'Lowri Kestrel, 9 Fathom Street');
}

/** `g` and the place's key, from anywhere but a text field. */
export async function goByKeys(hands: KeyboardHands, key: string, title: string | RegExp): Promise<void> {
  await hands.press('g');
  await hands.press(key);
  await heading(hands, title);
}

export async function heading(hands: KeyboardHands, name: string | RegExp): Promise<void> {
  await hands.page.getByRole('heading', { level: 1, name, exact: typeof name === 'string' }).waitFor();
  const busy = hands.page.locator('[aria-busy="true"]');
  while ((await busy.count()) > 0) await busy.first().waitFor({ state: 'detached' });
}

async function tick(hands: KeyboardHands, label: string): Promise<void> {
  await hands.tabTo(label);
  await hands.press('Space');
  hands.countField();
}
