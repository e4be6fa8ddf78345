import { LookCard } from './LookCard.tsx';
import { Outcomes, type OutcomesProps } from './Outcomes.tsx';
import type { StepShown } from './stepView.ts';

type WhatHappenedProps = Omit<OutcomesProps, 'outcomes'> & { readonly step: StepShown; readonly running: boolean };

/** The outcomes of a step as keys; of a look at several places all places at once. */
export function WhatHappened({ step, running, ...keys }: WhatHappenedProps) {
  if (!step.look) return <Outcomes outcomes={step.outcomes} {...keys} />;
  const { places, nothing } = step.look;
  const placed = places.flatMap(({ findings }) => findings.map(({ id }) => id));
  return (
    <LookCard
      key={step.id}
      places={places}
      others={step.outcomes.filter(({ id }) => id !== nothing && !placed.includes(id))}
      running={running}
      onFound={([first = nothing, ...also]) => keys.onOutcome(first, also)}
      onOutcome={keys.onOutcome}
      onSomethingElse={keys.onSomethingElse}
    />
  );
}
