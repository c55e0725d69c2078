package halfgram.prep.schedule;

/** Whatever places a workday: {@link Scheduler#place}, or one that remembers what it did before. */
public interface Placing {
  Rota place(Workday day, Budget budget);
}
