package halfgram.prep;

/** What a task has come to. */
public enum TaskState {
  TO_DO,
  ON_IT,
  PART_DONE,
  DONE,
  PROBLEM,
  /** Lost, and with it everything its make has come to. */
  FAILED
}
