import { useParams } from 'react-router';
import { jobId } from '../../core/ids.ts';
import { BenchChoice } from './BenchChoice.tsx';
import { BenchJob } from './BenchJob.tsx';
import './BenchRoom.css';

/** The bench: which machine, then that machine. */
export function BenchRoom() {
  const { job } = useParams();
  return job === undefined ? <BenchChoice /> : <BenchJob key={job} job={jobId(job)} />;
}
