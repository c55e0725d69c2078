package halfgram.pages.crew;

import java.util.List;
import java.util.Map;

/**
 * The crew of a day.
 *
 * @param day as the forms send it
 * @param before the day before, as an address writes it; after likewise
 * @param today whether it is today
 * @param blocks what those on shift do together: "Staff meal, 16:30 to 17:00"
 */
record CrewView(
    String day,
    String date,
    String before,
    String after,
    boolean today,
    String verdict,
    List<Row> here,
    List<Row> away,
    List<String> blocks,
    List<Machine> machines,
    List<Said> said) {

  /**
   * A cook.
   *
   * @param hours "10:30 to 22:45"; empty when they are not in
   * @param now what they are doing by the clock, today; empty on other days
   * @param there whether they are at work now, and so can go home
   * @param lacks what they still need before work can be given to them; empty for nothing
   * @param changed what was said of them and still counts; empty when the shifts say it
   */
  record Row(
      String code,
      String name,
      String stations,
      String hours,
      List<String> breaks,
      String now,
      boolean there,
      String lacks,
      String changed,
      Form form) {}

  /**
   * A machine.
   *
   * @param wash how long washing takes; empty when the book does not say
   * @param works "1 of 2 work"
   * @param missing whether some do not
   */
  record Machine(
      String code,
      String name,
      String place,
      String wash,
      String works,
      boolean missing,
      boolean several,
      List<Broken> broken,
      Form form) {}

  /**
   * Units that do not work, or are to stop.
   *
   * @param sequence of the form that says they are mended; empty when that was said
   */
  record Broken(String id, String said, String sequence) {}

  /**
   * What a form has in it.
   *
   * @param sequence the device's number of it: the same one sent again is the same entry
   * @param open whether it comes back as typed
   */
  record Form(
      String sequence,
      boolean open,
      String units,
      String from,
      String until,
      String note,
      Map<String, String> faults) {}

  /** Something said; what counts can be taken back. */
  record Said(String id, String time, String who, String what, boolean counts, String sequence) {}
}
