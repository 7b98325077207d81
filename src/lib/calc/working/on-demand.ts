import type { Quantity } from './reckoner.ts';
import { workingOf } from './recorder.ts';

/**
 * A recorded quantity whose value is known already, by the same code: how it came about is recorded when somebody looks.
 * @param record gives the quantity with its working; its value has the same bits as `value`.
 */
export function onDemand<T>(value: T, record: () => Quantity<T>): Quantity<T> {
  let made: object | undefined;
  const working = (): object => (made ??= workingOf(record()));
  return new Proxy(
    {},
    {
      get: (_, key) => (key === 'value' ? value : (Reflect.get(working(), key) as unknown)),
      has: (_, key) => Reflect.has(working(), key),
      ownKeys: () => Reflect.ownKeys(working()),
      getOwnPropertyDescriptor: (_, key) => Reflect.getOwnPropertyDescriptor(working(), key)
    }
  ) as Quantity<T>;
}
