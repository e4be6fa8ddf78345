import { type Row, shown } from '../row.ts';
import { COMPARED, hurtFigures, minutesFigures, nameOf, overMachines, rightFigures } from './liveFigures.ts';
import { minutesPlot } from './minutesPlot.ts';
import { simulateAll } from './simulateAll.ts';

export const liveRow: Row = {
  name: 'full model: hands-on minutes against other ways of working, right, harmless',
  measure: async ({ short, truths = short ? 3 : 20, machines = short ? 26 : 500, processes = 2 }) => {
    const traced = await simulateAll({ truths, machines, processes });
    const bars = [
      ...COMPARED.map((way) => ({ name: nameOf(way), minutes: overMachines(traced, (one) => one.runs[way].minutes) })),
      { name: 'knowing the fault (bound)', minutes: overMachines(traced, (one) => one.knowing) },
    ];
    return {
      figures: [
        shown('perturbed truths × machines', `${truths} × ${machines}`),
        ...minutesFigures(traced),
        ...rightFigures(traced),
        ...hurtFigures(traced),
      ],
      plots: [
        { name: 'minutes', svg: minutesPlot(`Hands-on minutes to settle a machine, ${truths} × ${machines}`, bars) },
      ],
    };
  },
};
