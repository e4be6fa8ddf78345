import { useQuery } from '@tanstack/react-query';
import { createHashRouter } from 'react-router';
import { RouterProvider } from 'react-router/dom';
import { currencyOf } from '../core/money/currencyOf.ts';
import { minorDigits } from '../core/money/minorDigits.ts';
import { catalogue } from './catalogue.ts';
import { WordsProvider } from './kit/text/words.tsx';
import { shopRead } from './link/reads.ts';
import { SetUpShop } from './reckoning/SetUpShop.tsx';
import { ROUTES } from './rooms.tsx';
import { WhoIsHereProvider } from './whoIsHere.tsx';
import './app.css';

const router = createHashRouter([...ROUTES]);
const digits = (code: string) => {
  const currency = currencyOf(code);
  return typeof currency === 'string' ? minorDigits(currency) : 2;
};

/** The window: the shop's words, who is here, the rooms. A shop that is not set up is set up first. */
export function App() {
  const shop = useQuery(shopRead());
  const settings = shop.data?.settings;
  return (
    <WordsProvider
      catalogue={catalogue}
      locale={settings?.locale ?? 'en-GB'}
      zone={settings?.zone ?? 'UTC'}
      currencyDigits={digits}
    >
      {shop.isPending && (
        <main>
          <p role="status">Knowngood</p>
        </main>
      )}
      {shop.data && !settings && <SetUpShop />}
      {shop.data && settings && (
        <WhoIsHereProvider staff={shop.data.staff} settings={settings}>
          <RouterProvider router={router} />
        </WhoIsHereProvider>
      )}
    </WordsProvider>
  );
}
