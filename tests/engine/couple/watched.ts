/** Notes what is read of a record, by the names of its fields. */
export function watched<T extends object>(record: T, name: string, read: Set<string>): T {
  return new Proxy(record, {
    get(target, key) {
      read.add(`${name}${String(key)}`);
      return Reflect.get(target, key);
    },
  });
}
