import { useMutation, useQuery } from '@tanstack/react-query';
import { Button } from 'react-aria-components';
import { useConnected } from './link/connection.ts';
import { ask } from './link/service.ts';

/** Stands for the rooms until they are here: shows that answers and changes come through. */
export function App() {
  const connected = useConnected();
  const { data } = useQuery(ask.list.queryOptions());
  const add = useMutation(ask.add.mutationOptions());
  return (
    <main>
      <h1>Knowngood</h1>
      <p>{connected ? 'Connected' : 'Waiting'}</p>
      <Button onPress={() => add.mutate({ text: `note ${data?.length}` })}>Add</Button>
      <ul>
        {data?.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </main>
  );
}
