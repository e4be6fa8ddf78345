import { type Projection, projectedTable } from './projection.ts';

/** Every paper issued: one number per kind and year. */
export const papers: Projection = {
  name: 'papers',
  version: 1,
  tables: [
    projectedTable({
      name: 'paper',
      columns: {
        kind: 'text',
        year: 'integer',
        number: 'text',
        seq: 'integer',
        job: 'text?',
        language: 'text',
        issued: 'integer',
        supersedes: 'text?',
        superseded_by: 'text?',
      },
      key: ['kind', 'year', 'number'],
      keyRefused: 'paper-number-already-used',
      onlyOne: [
        { columns: ['number'], refused: 'paper-number-already-used' },
        { columns: ['supersedes'], where: 'supersedes is not null', refused: 'paper-already-superseded' },
      ],
      indexes: [['job']],
    }),
  ],
  apply: async (write, { entry }) => {
    if (entry.kind !== 'paper-issued') return;
    const { number, kind, job, language, issued, supersedes } = entry.body;
    const year = Number(entry.stream.split(':')[2]);
    await write.insert('paper', {
      kind,
      year,
      number,
      seq: entry.seq,
      job,
      language,
      issued,
      supersedes,
      superseded_by: null,
    });
    if (supersedes !== null) await write.change('paper', { number: supersedes }, { superseded_by: number });
  },
};
