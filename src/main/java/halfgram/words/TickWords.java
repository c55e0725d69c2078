package halfgram.words;

import halfgram.prep.Tick;

/** What a tick says, as the office reads it. */
public final class TickWords {
  private TickWords() {}

  public static String said(Messages words, Tick.Kind kind) {
    return switch (kind) {
      case START -> words.say("log.start");
      case WEIGHED -> words.say("log.weighed");
      case PART_DONE -> words.say("log.part-done");
      case DONE -> words.say("log.done");
      case PROBLEM -> words.say("log.problem");
      case FAILED -> words.say("log.failed");
      case SOLVED -> words.say("log.solved");
      case NOTE -> words.say("log.note");
      case CALLED -> words.say("log.called");
      case ANSWERED -> words.say("log.answered");
      case TIMED -> words.say("log.timed");
      case LATER -> words.say("log.later");
      case HEARD -> words.say("log.heard");
      case TASTED -> words.say("log.tasted");
      case UNDO -> words.say("log.undo");
    };
  }
}
