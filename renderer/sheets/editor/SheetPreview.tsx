/** The steps as the technician will see them: the run's own cards, one step at a time, out of reach of keys and clicks. */
import { Group, NativeSelect } from '@mantine/core';
import { useMemo, useState } from 'react';
import { type FuelKey, type ModelSheet, modelSheet, type SheetStep } from '../../../domain/procedure/modelSheet.ts';
import type { StepList } from '../../../domain/procedure/progressTypes.ts';
import type { Json } from '../../../domain/procedure/sheetEdit.ts';
import { stepsOfList } from '../../../domain/procedure/stepListOf.ts';
import { Caution } from '../../kit/Caution.tsx';
import { Note } from '../../kit/Note.tsx';
import { FUEL_WORDS, keyOf } from '../../kit/tradeWords.ts';
import { useSignedIn, useUnitSystem } from '../../operations/AppStatus.tsx';
import { analyseRun } from '../../run/analyseRun.ts';
import '../../run/run.css';
import { ItemCard } from '../../run/stage/ItemCard.tsx';
import { RunContext, type RunContextValue } from '../../run/state/RunContext.ts';
import { wordSource } from '../../run/words/wordSource.ts';
import { optionWords } from './fieldWords.ts';
import { previewRun } from './previewRun.ts';

export function SheetPreview({ body }: { readonly body: Json }) {
  const parsed = useMemo(() => modelSheet.safeParse(body), [body]);
  const [list, setList] = useState<StepList>('startup');
  const [wantedFuel, setFuel] = useState('');
  const [position, setPosition] = useState(0);
  if (!parsed.success) {
    return (
      <Note tone="caution">
        The steps can be shown as soon as every field can be read: see what is to be put right.
      </Note>
    );
  }
  const sheet = parsed.data;
  const fuel = keyOf(FUEL_WORDS, wantedFuel) ?? sheet.fuels[0]?.fuel ?? 'natural-gas';
  const steps = stepsOfList(sheet, list);
  const step = steps[Math.min(position, steps.length - 1)];
  return (
    <>
      <Group gap="md" align="end">
        <NativeSelect
          label="Visit"
          value={list}
          data={[
            { value: 'startup', label: 'startup' },
            ...(sheet.service.length === 0 ? [] : [{ value: 'service', label: 'annual service' }]),
            ...(stepsOfList(sheet, 'repair').length === 0 ? [] : [{ value: 'repair', label: 'repair' }]),
          ]}
          onChange={(event) => {
            const wanted = event.currentTarget.value;
            setList(wanted === 'service' || wanted === 'repair' ? wanted : 'startup');
            setPosition(0);
          }}
        />
        <NativeSelect
          label="On"
          value={fuel}
          data={sheet.fuels.map((one) => ({ value: one.fuel, label: FUEL_WORDS[one.fuel] }))}
          onChange={(event) => setFuel(event.currentTarget.value)}
        />
        <NativeSelect
          label="Step"
          value={String(steps.indexOf(step ?? steps[0] ?? NO_STEP))}
          data={steps.map((one, index) => ({ value: String(index), label: `${index + 1}. ${one.title}` }))}
          onChange={(event) => setPosition(Number(event.currentTarget.value))}
        />
      </Group>
      {step === undefined ? null : <PreviewStep sheet={sheet} list={list} fuel={fuel} step={step} />}
    </>
  );
}

const NO_STEP: SheetStep = { key: '', title: '', who: 'anyone', needsClear: null, after: [], items: [] };

function PreviewStep({
  sheet,
  list,
  fuel,
  step,
}: {
  readonly sheet: ModelSheet;
  readonly list: StepList;
  readonly fuel: FuelKey;
  readonly step: SheetStep;
}) {
  const signedIn = useSignedIn();
  const unitSystem = useUnitSystem();
  const value = useMemo((): RunContextValue => {
    const now = new Date().toISOString();
    const view = previewRun(sheet, list, fuel, now);
    const analysis = analyseRun(view, [], { now, firingReleasedAt: null });
    const nothing = () => undefined;
    return {
      view,
      analysis,
      words: wordSource(sheet, analysis.steps),
      unitSystem,
      signedIn,
      isSealed: false,
      write: () => Promise.reject(new Error('a preview is out of reach of keys and clicks')),
      active: null,
      goTo: nothing,
      goToStep: nothing,
      goToLeaving: nothing,
      saveAndGoOn: async () => undefined,
      saveThen: async () => undefined,
      keysTooEarly: '',
      sayNotTaken: nothing,
      makeSafe: nothing,
      takeIn: nothing,
      unsaved: { list: [], add: nothing, remove: nothing },
      instruments: { list: [], inHand: () => ({ state: 'chosen', instrumentId: null }), choose: nothing },
      past: [],
      measuredById: signedIn.staffId,
      chooseMeasuredBy: nothing,
    };
  }, [sheet, list, fuel, signedIn, unitSystem]);
  const progress = value.analysis.progress.steps.find((one) => one.stepKey === step.key);
  return (
    <RunContext value={value}>
      <section className="sheet-preview" aria-label={`Step: ${step.title}`}>
        <h3>{step.title}</h3>
        <p className="lo-faint">
          {optionWords(step.who)}
          {step.needsClear === null ? '' : `; opens when nothing blocks ${step.needsClear}`}
        </p>
        {step.caution === undefined ? null : <Caution>{step.caution}</Caution>}
        <ol>
          {step.items.map((item) => {
            const shown = progress?.items.find((one) => one.itemKey === item.key);
            return (
              <li key={item.key}>
                <p className="lo-hidden">
                  {item.label}: {optionWords(item.kind)}
                </p>
                {shown === undefined ? (
                  <p className="lo-faint">
                    {item.label}: not asked until its condition holds, or not on {FUEL_WORDS[fuel]}.
                  </p>
                ) : (
                  <div inert>
                    <ItemCard item={item} progress={{ ...shown, state: 'open', because: [] }} />
                  </div>
                )}
              </li>
            );
          })}
        </ol>
      </section>
    </RunContext>
  );
}
