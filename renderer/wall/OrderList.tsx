import { useQuery } from '@tanstack/react-query';
import { Link } from 'react-router';
import { useWords } from '../kit/text/words.tsx';
import { ordersRead } from '../link/reads.ts';

/** What is on its way, waits for a word or goes back, what is past its day first. */
export function OrderList() {
  const { t, dayClock } = useWords();
  const orders = useQuery(ordersRead()).data ?? [];
  if (orders.length === 0) return null;
  return (
    <section className="k-out">
      <h2>{t('wall.orders')}</h2>
      <ul className="wall-list">
        {orders.map((order) => (
          <li key={order.order + order.is}>
            <b>{order.what}</b>, {order.supplier}
            <br />
            {t(`wall.order.${order.is}`, { day: order.by === null ? t('wall.no-day') : dayClock(order.by) })}
            {order.overdue && (
              <>
                {' '}
                <b>{t('wall.overdue')}</b>
              </>
            )}
            <br />
            <Link to={`/counter/${order.job}`}>{t('wall.for', { called: order.called })}</Link>
          </li>
        ))}
      </ul>
    </section>
  );
}
