package halfgram.pages.deliveries;

import java.util.List;

/**
 * The deliveries by day, those of today first.
 *
 * @param past whether these are the earlier ones
 */
record ListView(List<Day> days, boolean past) {

  /** The deliveries of a business day. */
  record Day(String date, List<Told.One> deliveries) {}
}
