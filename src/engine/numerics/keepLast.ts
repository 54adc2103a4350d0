/** Whether two plain values (numbers, words, null, lists and records of such) say the same. */
export function sameContent(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return false;
  if (Array.isArray(one) !== Array.isArray(other)) return false;
  return holds(one, other) && countOf(one) === countOf(other);
}

function holds(one: object, other: object): boolean {
  for (const key in one) {
    if (!(key in other)) return false;
    if (!sameContent(one[key as keyof object], other[key as keyof object])) return false;
  }
  return true;
}

function countOf(record: object): number {
  let count = 0;
  for (const _ in record) count += 1;
  return count;
}

/**
 * The function with its last answers kept: what does not hang on the value a builder turns is not worked out anew.
 *
 * @param answer one that nobody changes
 * @param hangsOn all of the question that the answer hangs on, as plain values
 * @param most answers kept
 */
export function keepLast<Question, Answer>(
  answer: (question: Question) => Answer,
  hangsOn: (question: Question) => unknown,
  most: number,
): (question: Question) => Answer {
  const kept: { readonly on: unknown; readonly answer: Answer }[] = [];
  return (question) => {
    const on = hangsOn(question);
    const known = kept.find((one) => sameContent(one.on, on));
    if (known) return known.answer;
    const found = answer(question);
    // A copy: a question that is changed in place is another one.
    kept.unshift({ on: structuredClone(on), answer: found });
    kept.length = Math.min(kept.length, most);
    return found;
  };
}
