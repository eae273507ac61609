import { describe, expect, it } from 'vitest';
import { LatestTask } from '../../../components/desk/results/latest-task.js';

const made = (): { latest: LatestTask; told: boolean[] } => {
  const told: boolean[] = [];
  const latest: LatestTask = new LatestTask({
    failed: () => 'It was not worked out',
    onChange: () => told.push(latest.busy),
  });
  return { latest, told };
};

/** A question that is answered when the test says so. */
function held<T>(): {
  work: () => Promise<T>;
  answer: (value: T) => void;
  fail: (error: Error) => void;
} {
  let answer!: (value: T) => void;
  let fail!: (error: Error) => void;
  const promise = new Promise<T>((resolve, reject) => ([answer, fail] = [resolve, reject]));
  return { work: () => promise, answer, fail };
}

describe('the latest question', () => {
  it('takes the answer in before anybody hears that it is no longer busy', async () => {
    const { latest, told } = made();
    const order: string[] = [];
    const question = held<number>();
    const asked = latest.ask(question.work, (value) =>
      order.push(`kept ${value}, ${told.length} told`),
    );
    question.answer(7);
    expect(await asked).toEqual({ done: true, value: 7 });
    expect(order).toEqual(['kept 7, 1 told']);
    expect(told).toEqual([true, false]);
  });

  it('drops the answer of one that another came after, whichever ends first', async () => {
    const { latest } = made();
    const kept: number[] = [];
    const [first, second] = [held<number>(), held<number>()];
    const asked = [first, second].map((item) => latest.ask(item.work, (value) => kept.push(value)));
    second.answer(2);
    first.answer(1);
    expect(await Promise.all(asked)).toEqual([{ done: false }, { done: true, value: 2 }]);
    expect(kept).toEqual([2]);
    expect(latest.busy).toBe(false);
  });

  it('stays busy for the later one when the earlier fails, and does not speak of that', async () => {
    const { latest } = made();
    const [first, second] = [held<number>(), held<number>()];
    const asked = latest.ask(first.work);
    void latest.ask(second.work);
    first.fail(new Error('gone'));
    expect(await asked).toEqual({ done: false });
    expect(latest.busy).toBe(true);
    expect(latest.trouble).toBe('');
  });

  it('says in words what failed until the next question', async () => {
    const { latest } = made();
    const question = held<number>();
    const asked = latest.ask(question.work);
    question.fail(new Error('there is no price book'));
    await asked;
    expect(latest.trouble).toBe('It was not worked out: there is no price book');
    void latest.ask(held<number>().work);
    expect(latest.trouble).toBe('');
  });

  it('once stopped is not busy, and tells the work by its signal', async () => {
    const { latest } = made();
    let signal: AbortSignal | undefined;
    const question = held<number>();
    const asked = latest.ask((given) => {
      signal = given;
      return question.work();
    });
    latest.stop();
    expect(signal!.aborted).toBe(true);
    expect(latest.busy).toBe(false);
    question.answer(1);
    expect(await asked).toEqual({ done: false });
  });
});
