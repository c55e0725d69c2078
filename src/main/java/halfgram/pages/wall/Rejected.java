package halfgram.pages.wall;

/** The form that was not accepted and comes back as typed; of the three at most one is. */
record Rejected(Hand.Rejected hand, AtBaths.Rejected bath, AtGate.Rejected gate) {
  static final Rejected NONE =
      new Rejected(Hand.Rejected.NONE, AtBaths.Rejected.NONE, AtGate.Rejected.NONE);

  static Rejected of(Hand.Rejected hand) {
    return new Rejected(hand, NONE.bath(), NONE.gate());
  }

  static Rejected of(AtBaths.Rejected bath) {
    return new Rejected(NONE.hand(), bath, NONE.gate());
  }

  static Rejected of(AtGate.Rejected gate) {
    return new Rejected(NONE.hand(), NONE.bath(), gate);
  }
}
