/** Words for every failure the contract declares. A new code without words does not compile. */
import { readinessLabel } from '../../domain/procedure/readiness.ts';
import { formatNumber } from '../../domain/quantity/formatQuantity.ts';
import { assertNever } from '../../domain/result.ts';
import { LONGEST_WAY_MIN } from '../../domain/schedule/readTravelRows.ts';
import { COPY_PROBLEM_WORDS } from '../../domain/text/copyProblemWords.ts';
import type { StaffRole } from '../../domain/vocabulary/people.ts';
import type { ErrorsOf, OperationName } from '../../electron/contract/index.ts';
import { COVER_DATE_WORDS } from './coverDates.ts';
import { clockWords, dayWords, weekdayWords } from './dayWords.ts';
import { OUTCOME_WORDS } from './tradeWords.ts';
import { transferConsequenceWords } from './transferWords.ts';

type AnyError = { [N in OperationName]: ErrorsOf<N> }[OperationName];
export type ErrorCode = AnyError['code'];
type DataByCode = { [C in ErrorCode]: Extract<AnyError, { readonly code: C }>['data'] };
export type ErrorWith<C extends ErrorCode> = { readonly code: C; readonly data: DataByCode[C] };

export function errorWords<C extends ErrorCode>(error: ErrorWith<C>): string {
  return WORDS[error.code](error.data);
}

const WORDS: { readonly [C in ErrorCode]: (data: DataByCode[C]) => string } = {
  'bad-input': ({ issues }) =>
    `Some fields cannot be taken as they are: ${issues.map(({ path, message }) => `${path || 'form'} (${message})`).join(', ')}.`,
  'unknown-operation': ({ name }) => `This version of the program does not know “${name}”. Restart it.`,
  'not-signed-in': () => 'Nobody is signed in here. Sign in and try again; what you typed is kept.',
  'not-allowed': ({ needs }) => `Only ${listOr(needs.map(roleWords))} may do this.`,
  'not-found': ({ entity }) => `The ${entity.replaceAll('-', ' ')} is not on file any more.`,
  'store-closed': () =>
    'The firm’s own data cannot be opened: it is damaged or missing. Close the program and open it again, and it offers to go back to a backup.',
  'not-saved': ({ why }) => `Not saved: ${NOT_SAVED[why]}. Nothing was written; what you typed is still here.`,
  internal: ({ ref }) =>
    `Something went wrong in the program itself. It is written down under ${ref} in log/faults.log of the data folder. Try once more.`,
  offline: () => 'The program’s core does not answer. What you typed is kept; try again in a moment.',
  'table-not-read': ({ why, row }) => `Nothing was taken in: ${tableProblemWords(why, row)}`,
  'travel-columns-missing': ({ missing }) =>
    `Nothing was taken in: the first line must name the columns from, to and minutes; missing: ${missing.join(', ')}.`,
  'travel-lines-wrong': ({ lines, count }) =>
    `Nothing was taken in, ${count === 1 ? '1 line is' : `${count} lines are`} wrong: ${lines.map(travelLineWords).join('; ')}${lines.length < count ? ' …' : '.'}`,
  'field-twice': ({ field }) => `Two columns are both “${field}”. Each can be one column only.`,
  'import-has-errors': ({ issueCount }) =>
    `Nothing was taken in: ${issueCount} cells or rows cannot be taken as they are. Put them right in the file and open it again.`,
  'imported-before': ({ importedAt }) => `This very file was taken in already, on ${importedAt.slice(0, 10)}.`,
  'list-work-going': () => 'A list is just being taken in or out. Wait for it, or stop it.',
  'list-work-stopped': () => 'It was stopped: nothing of it was written.',
  'already-undone': () => 'This import was taken out already.',
  'later-work': ({ hangsOn }) =>
    `It cannot be taken out as a whole any more, later work hangs on it: ${hangsOn.map(({ what, count }) => `${count} × ${what.replaceAll('_', ' ')}`).join(', ')}. Nothing was changed.`,
  'currency-missing': () => 'An amount needs its currency, for example USD or EUR.',
  'days-out-of-order': ({ earlier, later }) => `“${later}” cannot be before “${earlier}”.`,
  'agreement-overlaps': ({ fromOn, toOn }) =>
    `There is an agreement from ${dayWords(fromOn)} ${toOn === null ? 'that nobody has ended' : `to ${dayWords(toOn)}`}. End it the day before, or choose other days.`,
  'party-not-there': ({ name }) =>
    `${name} is neither the customer where the appliance stands nor anybody at the site. Choose somebody from the list, or give them a part in the site first.`,
  'granted-more-than-asked': ({ what }) =>
    `More was granted for ${what} than was asked for. Is one of the two mistyped?`,
  'not-the-last-transfer': () => 'The house has changed hands again meanwhile, or was put back already.',
  'transfer-rested-on': ({ what }) =>
    `It cannot be put back, other things rest on it: ${transferConsequenceWords(what)}. Hand the house over once more instead.`,
  'same-owner': () => 'This is the owner already.',
  'unknown-fields': ({ names }) =>
    `${names.map((name) => `{{${name}}}`).join(', ')} is no field of a message. Take it out, or choose one of those listed.`,
  'nothing-to-prepare': () => 'None of these can go out: why stands beside each.',
  'firm-email-missing': () => 'Drafts need a sender: give the company’s e-mail address in the settings.',
  'emergency-number-missing': () =>
    'The sheet says whom to call about gas: give the gas emergency number in the settings first.',
  'papers-missing': () =>
    'A file is needed: the certificate or the data sheet, as PDF or photo. The office may leave it out.',
  'no-photo': () => 'A photo is needed: a JPEG or PNG picture.',
  'day-too-early': ({ after, on }) =>
    `That was before ${after === 'submitted' ? 'it was handed in' : `“${COVER_DATE_WORDS[after]}”`}, ${dayWords(on)}. Is the year right?`,
  'startup-open': () =>
    'A startup of this boiler is open already: go on with that one. A return trip takes it up again.',
  'day-in-future': () => 'This day is still to come.',
  'already-set-up': () => 'This store already belongs to a company. Sign in instead.',
  'no-owner': () => 'At least one person needs the role “owner”, and the first one must have it.',
  'unknown-time-zone': ({ timeZone }) => `“${timeZone}” is no time zone this computer knows. Example: America/Toronto.`,
  'not-in-demo': () => 'The demo is not open.',
  'wrong-pin': ({ waitS }) => (waitS > 0 ? `Wrong PIN. Try again in ${waitS} s.` : 'Wrong PIN. Try again.'),
  'folder-refused': ({ folder, why }) => `${folder}: ${FOLDER_REFUSED[why]} Nothing was changed.`,
  'in-demo': () => 'The demo is copied nowhere: it can be made anew. Leave it first.',
  'copy-failed': ({ why }) => `No backup was made: ${COPY_FAILED[why]}. The store in use was left as it is.`,
  'store-is-open': () => 'The data is open again; nothing was changed.',
  'copy-damaged': ({ why }) =>
    `This backup cannot be used: ${COPY_PROBLEM_WORDS[why]}. The store in use was left as it is.`,
  'looks-like': ({ others }) => `Somebody much like this is on file: ${others.map(({ name }) => name).join(', ')}.`,
  'serial-taken': ({ where, how, otherSerial, isOnSameSite }) => {
    const place = isOnSameSite ? ' at this site' : where === null ? '' : ` at ${where}`;
    const found =
      how === 'serial-elsewhere'
        ? `The same maker and serial number is on file${place}.`
        : `A serial number that is easily read for this one, ${otherSerial}, is on file${place}.`;
    return `${found} Check the plate: ${isOnSameSite ? 'typed in the place of the other of a pair?' : 'the wrong one of a pair, or a slip in typing?'}`;
  },
  'unknown-sheet': ({ sheetId }) => `There is no model sheet “${sheetId}” in this store.`,
  'dates-out-of-order': ({ earlier, later }) =>
    `“${COVER_DATE_WORDS[earlier]}” must not be later than “${COVER_DATE_WORDS[later]}”.`,
  'last-owner': () => 'Somebody must stay owner. Give the role to another person first.',
  'hours-reversed': ({ weekday }) =>
    `${weekday === null ? 'The time' : weekdayWords(weekday)}: the end comes before the beginning, or the break is not inside the hours.`,
  'weekday-twice': ({ weekday }) => `${weekdayWords(weekday)} is there twice.`,
  'visit-changed': ({ plannedOn, startMin, crew }) =>
    `Somebody moved this visit meanwhile: it is now on ${dayWords(plannedOn)}${startMin === null ? '' : ` at ${clockWords(startMin)}`} with ${listAnd(crew)}. Nothing was changed; look again.`,
  'visit-not-wasted': () => 'Only a visit that could not do its work was a wasted trip.',
  'not-on-crew': () => 'This person is not on the visit any more.',
  'range-in-past': ({ today }) => `These days are over. Plan from today, ${dayWords(today)}, on.`,
  'range-too-long': ({ mostDays }) => `At most ${mostDays} days are planned at a time.`,
  'proposal-running': () => 'The plan is still being worked on. Stop it, or wait until it is done.',
  'job-changed': () =>
    'A job of this plan has been booked or closed meanwhile. Nothing was changed; have the plan made anew.',
  'plan-outdated': () =>
    'Hours, absences, licences or other visits have changed since this plan was made. Nothing was changed; have it made anew.',
  'invoice-number-missing': () => 'The day of an invoice needs its number.',
  'not-standing': () => 'This appliance was taken out of use. Put it back first, on its own page.',
  'is-standing': () => 'It stands in its place already.',
  'same-site': () => 'It stands there already.',
  'replaced-by-itself': () => 'An appliance cannot replace itself. Choose the other one.',
  'visits-ahead': ({ days }) =>
    `A visit to it is booked or under way (${days.map((day) => dayWords(day)).join(', ')}). Cancel or finish it first.`,
  'day-not-between': ({ validFrom, validTo }) =>
    `The last day must lie ${validTo === null ? `on or after ${dayWords(validFrom)}` : `from ${dayWords(validFrom)} to ${dayWords(validTo)}`}. A wrong day on file is corrected; what never was is withdrawn.`,
  'name-differs': () => 'The name is not the one on file. Type it letter for letter.',
  'person-erased': () => 'The data of this person was erased. Nothing can be written about them any more.',
  'dates-reversed': () => 'The second date is before the first.',
  'consent-missing': () => 'The office registers on the owner’s behalf only with the owner’s consent: give its date.',
  'follow-up-missing': () => 'When the owner registers, the office needs a day to follow up.',
  'serial-range-unclear': ({ from, to, why }) =>
    `The serials ${from} to ${to} cannot be compared: ${RANGE_PROBLEMS[why]}.`,
  'altitudes-reversed': () => 'The lower altitude is above the higher one.',
  'no-owner-on-file': () => 'Nobody is on file for this appliance: give its site and customer first.',
  'batch-stopped': () => 'The building was stopped. Resume it to go on.',
  'export-stopped': () => 'The files are not being made any more. Begin again.',
  'nothing-built': () => 'Nothing of it is built yet.',
  'packet-missing': () => 'Build the final packet first.',
  'not-submitted': () => 'It has not been submitted yet.',
  'gaps-open': ({ gaps }) => `The packet still lacks ${gaps.length === 1 ? 'one thing' : `${gaps.length} things`}.`,
  'not-sealed': () => 'The record is not sealed yet. A draft can be built at any time.',
  'time-not-possible': ({ on, at }) =>
    `${at} on ${dayWords(on)} cannot be: it is still to come, before the visit’s day, or before its own beginning.`,
  'no-such-field': () => 'The record has no such field. Say in words what the amendment is about.',
  'nothing-amended': () => 'That is what the record says already.',
  'not-json': ({ message }) => `The file is not readable as JSON: ${message}`,
  'bad-sheet': ({ problems }) =>
    `The sheet was not taken in: ${problems.length === 1 ? 'one field is' : `${problems.length} fields are`} wrong.`,
  'revision-differs': ({ sheetId, revision }) =>
    `Sheet “${sheetId}” revision ${revision} is here with other contents. A changed sheet needs a revision of its own.`,
  'no-such-part': ({ partKey }) => `The sheet of this job lists no part “${partKey}”.`,
  'revision-not-newer': ({ newest }) =>
    `Revision ${newest} is here already: a new one needs a later year and month, or the next number behind the point.`,
  'sheet-exists': ({ sheetId }) => `There is a sheet “${sheetId}” already. Give the new one another name.`,
  'draft-changed': () => 'The draft was changed in another window meanwhile. Nothing was lost there; look again.',
  'registration-changed': () =>
    'Somebody else has confirmed it or taken it back meanwhile. Look at how it stands now, then try again.',
  'visit-not-cancelled': () => 'The visit stands in the diary already.',
  'job-booked-elsewhere': () => 'It cannot be brought back: its job was booked for another visit meanwhile.',
  'job-closed': () => 'It cannot be brought back: its job was closed meanwhile.',
  'draft-not-thrown-away': () => 'The draft was taken up again already.',
  'draft-ended': () => 'This draft was published or thrown away meanwhile.',
  'no-such-place': () => 'This part of the draft is not there any more; look again.',
  'nothing-to-undo': () => 'There is nothing to take back.',
  'no-such-item': () => 'The sheet of this job has no such item.',
  'readiness-open': ({ items }) =>
    `${items.length === 1 ? 'One readiness item is' : `${items.length} readiness items are`} still open (${readinessNames(items.map(({ itemKey }) => itemKey))}). Pencil the visit in, or answer ${items.length === 1 ? 'it' : 'them'} first.`,
  'needs-licence': ({ name, why, on }) => `${name} may not do gas work here on ${dayWords(on)}: ${LICENCE[why]}.`,
  'jobs-on-several-sites': () => 'One visit goes to one site. Book the others on their own.',
  'times-reversed': ({ plannedFrom, plannedTo }) =>
    `The visit would end (${plannedTo}) before it starts (${plannedFrom}).`,
  'visit-begun': () => 'The visit has begun: it can no longer be moved or cancelled, only finished.',
  'no-sheet': ({ fuel }) =>
    `No model sheet here covers this appliance${fuel === null ? '' : ` on ${fuel.replaceAll('-', ' ')}`}. Choose one on the appliance, or take one in.`,
  'fuel-unknown': () => 'The fuel is not known. Give the site’s gas supply, or the fuel on the plate.',
  'visit-cancelled': () => 'The visit was cancelled.',
  'run-sealed': ({ sealedAt }) =>
    `The record was sealed on ${dayWords(sealedAt.slice(0, 10))}. A correction is an amendment.`,
  'visit-ended': ({ outcome }) =>
    outcome === 'finished'
      ? 'This visit has ended already: finished.'
      : `This visit has ended (${OUTCOME_WORDS[outcome]}): go on with a return trip.`,
  'no-return-needed': () => 'Nothing of this visit is left to come back to.',
  'step-locked': ({ locks }) =>
    locks.length === 1
      ? 'This step is locked: something before it is open.'
      : `This step is locked: ${locks.length} things before it are open.`,
  'step-not-open': () => 'This step is not open yet.',
  'run-was-left': () => 'This run was left for hours: open it and go on there. What has grown too old is asked again.',
  'no-such-step': () => 'The sheet of this job has no such step.',
  'witness-is-same': ({ name }) => `${name} is the one recording this: somebody else has to confirm it.`,
  'signed-by-another': ({ written, name }) =>
    `“${written}” is not ${name}, who is said to have written it. A licensed person signs under their own name: choose under “Written by” who signed, or write the name in full.`,
  'not-an-option': ({ value }) => `“${value}” is not one of the answers.`,
  'must-be-possible': () => 'This one cannot be answered “not possible”.',
  'cannot-read': () => 'This cannot be read as a number with its unit.',
  'rating-on-file': ({ ratedInputKw }) =>
    `The appliance’s file says ${formatNumber(ratedInputKw, 1)} kW already. If the plate says otherwise, change it under the appliance.`,
  'cannot-read-row': ({ position }) =>
    `Nothing was taken in: reading ${position + 1} of the file cannot be read as a number with its unit.`,
  'outside-the-visit': ({ position }) =>
    `Nothing was taken in: reading ${position + 1} of the file was not taken during this visit by its own clock.`,
  'one-place-twice': ({ position }) =>
    `Nothing was taken in: reading ${position + 1} of the file goes where another one goes already.`,
  'no-such-suggestion': () => 'The reading has changed meanwhile; look again.',
  'needs-new-reading': () => 'This would turn a bad finding good: read again instead of converting.',
  'hold-running': () => 'The wait is already running.',
  'hold-not-over': ({ leftS }) => `${Math.ceil(leftS)} s of the wait are left.`,
  'hold-not-running': () => 'The wait is not running.',
  'tuning-running': () => 'The tuning run is already running.',
  'tuning-not-running': () => 'The tuning run is not running.',
  'stage-out-of-order': ({ expected }) =>
    expected === null ? 'All stages have been reached.' : `The next stage is “${expected.replaceAll('-', ' ')}”.`,
  'stages-missing': ({ stages }) =>
    `Stages not reached yet: ${stages.map((key) => key.replaceAll('-', ' ')).join(', ')}.`,
  'leaving-blocked': ({ blockers }) =>
    `${blockers.length === 1 ? 'One thing stands' : `${blockers.length} things stand`} in the way of leaving.`,
  'not-begun': () => 'The visit has not begun.',
  'reason-missing': () => 'Say why.',
  'reason-says-nothing': () =>
    'Say it in a few words: what was found, what was put right, how it was checked. The next person relies on it.',
  'no-make-safe': () => 'There is no open make-safe on this visit.',
  'not-finished': () => 'Finish the visit first.',
  'make-safe-closed': () => 'This make-safe is already closed.',
};

const RANGE_PROBLEMS = {
  'no-number': 'one of them has no digits',
  'not-comparable': 'what stands around the number differs',
  reversed: 'the first is the larger one',
} as const;

const NOT_SAVED = {
  'disk-full': 'the disk is full',
  'read-only': 'the data folder may not be written to',
  locked: 'another program holds the data file',
  damaged: 'the data file is damaged. Close the program and open it again, and it offers to go back to a backup',
  failed: 'the disk refused',
} as const;

const FOLDER_REFUSED = {
  'not-a-full-path': 'give the whole path, from the drive or the root on.',
  'not-there': 'there is no such folder. Plug the disk in, or make the folder first.',
  'inside-data': 'this lies inside the data folder itself. Choose a folder on another disk.',
  'not-writable': 'nothing can be written there.',
} as const;

/** Also said on top of every screen and on that of the backups. */
export const COPY_FAILED = {
  ...COPY_PROBLEM_WORDS,
  'disk-full': 'the disk is full',
  'read-only': 'the folder of the backups may not be written to',
  locked: 'another program holds the file',
  damaged: 'the data file is damaged',
  failed: 'the folder of the backups cannot be reached or written to',
  integrity: 'the data file is damaged',
  'foreign-keys': 'records in the data do not fit together',
  'seal-chain': 'a sealed record was altered or taken away outside the program',
} as const;

export const LICENCE = {
  'no-licence': 'no licence on file',
  'not-valid-on-day': 'the licence is not valid on that day',
  'other-fuel': 'the licence is for another fuel',
  'too-large': 'the appliance is larger than the licence allows',
  'rating-unknown':
    'the licence has an upper limit, and the rated input on the plate is not on file. Read the plate first',
} as const;

/** Also said on the import's own screen. */
export function tableProblemWords(why: DataByCode['table-not-read']['why'], row: number | null): string {
  return TABLE_PROBLEMS[why](row);
}

const TABLE_PROBLEMS: Readonly<Record<DataByCode['table-not-read']['why'], (row: number | null) => string>> = {
  'too-large': () => 'the file is too large. The largest is 32 MB; split it into several.',
  'too-many-rows': (row) => `${row ?? 'too many'} rows are too many at once. Split the file into parts of 20 000 rows.`,
  'too-many-columns': () => 'there are more than 200 columns. Leave out those that are not needed.',
  'not-text': () => 'this is no text file. Save the list as CSV (UTF-8) or as a workbook (.xlsx).',
  'not-a-table': () => 'there is only one column. Columns are kept apart by commas, semicolons or tabs.',
  'not-a-workbook': () => 'this workbook cannot be opened. Save it as .xlsx without a password, or as CSV.',
  'quotes-broken': (row) => `a quotation mark is never closed, from row ${row ?? '?'} on. Put it right in the file.`,
  'no-rows': () => 'there is nothing under the headings.',
  'sheet-missing': () => 'the workbook has no sheet of that name.',
};

function travelLineWords(line: DataByCode['travel-lines-wrong']['lines'][number]): string {
  switch (line.code) {
    case 'name-missing':
      return `line ${line.row} has nothing under “${line.column}”`;
    case 'not-whole-minutes':
      return line.typed === ''
        ? `line ${line.row} has no minutes`
        : `line ${line.row}: “${line.typed}” is no whole number of minutes up to ${LONGEST_WAY_MIN}`;
    case 'said-otherwise':
      return `line ${line.row} gives other minutes for the same way than line ${line.earlierRow}`;
    default:
      return assertNever(line);
  }
}

export function roleWords(role: StaffRole): string {
  return role === 'owner' ? 'owner / manager' : role;
}

/** The first few by name; the list beside the form shows the rest. */
function readinessNames(keys: readonly string[]): string {
  const names = [...new Set(keys)].map(readinessLabel);
  return names.length > 3 ? `${names.slice(0, 3).join('; ')} …` : names.join('; ');
}

function listOr(words: readonly string[]): string {
  return joined(words, 'or');
}

function listAnd(words: readonly string[]): string {
  return joined(words, 'and');
}

function joined(words: readonly string[], last: string): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
}
