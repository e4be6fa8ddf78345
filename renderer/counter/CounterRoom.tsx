import { useQuery } from '@tanstack/react-query';
import { useParams } from 'react-router';
import { jobId } from '../../core/ids.ts';
import { shopRead } from '../link/reads.ts';
import { JobAtCounter } from './job/JobAtCounter.tsx';
import { TakingIn } from './taking-in/TakingIn.tsx';
import './CounterRoom.css';

/** The counter: taking in, or the sheet of one job from the owner's word to hand-over. */
export function CounterRoom() {
  const { job } = useParams();
  const settings = useQuery(shopRead()).data?.settings;
  if (!settings) return null;
  return job === undefined ? (
    <TakingIn settings={settings} />
  ) : (
    <JobAtCounter key={job} job={jobId(job)} settings={settings} />
  );
}
