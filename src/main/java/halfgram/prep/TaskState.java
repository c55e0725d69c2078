package halfgram.prep;

/** What a task has come to. */
public enum TaskState {
  TO_DO,
  ON_IT,
  PART_DONE,
  DONE,
  PROBLEM
}
